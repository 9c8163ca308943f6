"""Invented readings of a logger in an unheated loft: python3 samples/climate/makeClimate.py writes both files again."""
import math, random
from datetime import datetime, timedelta
from pathlib import Path
from openpyxl import Workbook

here = Path(__file__).parent
random.seed(20260301)
start = datetime(2026, 2, 20)
rows = []
for hour in range(24 * 28):
    # Three days without a battery
    if 24 * 16 <= hour < 24 * 19:
        continue
    days = hour / 24
    celsius = 3.5 + 2.5 * math.sin(days / 4.1) + 4.2 * math.sin(2 * math.pi * (days - 0.4)) + random.gauss(0, 0.3)
    humidity = 76 - 1.9 * (celsius - 3.5) + 5 * math.sin(days / 2.7) + random.gauss(0, 1)
    rows.append((start + timedelta(hours=hour), round(celsius, 1), round(min(max(humidity, 20), 100), 1)))

comma = lambda value: f"{value:.1f}".replace(".", ",")
lines = ["Logger 3 (invented);;", "Datum;Uhrzeit;Temperatur (°C);Feuchte (% rF)"]
lines += [f"{t:%d.%m.%Y};{t:%H:%M};{comma(c)};{comma(h)}" for t, c, h in rows]
(here / "sail-loft.csv").write_bytes("\r\n".join(lines + [""]).encode("utf-8"))

book = Workbook()
sheet = book.active
sheet.title = "Readings"
sheet.append(["Date and time", "Temperature (°F)", "RH (%)"])
for t, c, h in rows[: 24 * 7]:
    sheet.append([t, round(c * 9 / 5 + 32, 1), h])
book.save(here / "sail-loft.xlsx")
