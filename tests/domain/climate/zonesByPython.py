"""Instants at which clocks of some zones show some times, by Python's zoneinfo: python3 zonesByPython.py > zones.json."""
import json, random
from datetime import datetime, timedelta, timezone
from zoneinfo import ZoneInfo

random.seed(7)
rows = []
for zone in ["Europe/Lisbon", "America/New_York", "Australia/Lord_Howe", "Asia/Kolkata", "Pacific/Apia"]:
    info = ZoneInfo(zone)
    start = datetime(2009, 1, 1)
    moments = [start + timedelta(minutes=random.randrange(0, 20 * 365 * 1440)) for _ in range(60)]
    # Every hour about the changes of one year
    day = datetime(2026, 1, 1, tzinfo=timezone.utc)
    for step in range(365 * 24):
        one, other = day + timedelta(hours=step), day + timedelta(hours=step + 1)
        if one.astimezone(info).utcoffset() != other.astimezone(info).utcoffset():
            local = one.astimezone(info).replace(tzinfo=None)
            moments += [local + timedelta(minutes=m) for m in range(-180, 240, 20)]
    for shown in moments:
        instants = set()
        for fold in (0, 1):
            utc = shown.replace(tzinfo=info, fold=fold).astimezone(timezone.utc)
            if utc.astimezone(info).replace(tzinfo=None) == shown:
                instants.add(int(utc.timestamp()))
        rows.append([zone, int(shown.replace(tzinfo=timezone.utc).timestamp()), sorted(instants)])
print("[\n" + ",\n".join(json.dumps(row) for row in rows) + "\n]")
