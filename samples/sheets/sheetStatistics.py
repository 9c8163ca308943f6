"""Counts, mean strengths and mean wood failure of the wide sheet, computed with openpyxl alone.

python3 samples/sheets/sheetStatistics.py > samples/sheets/wide-by-colour.expected.json
"""
import json
import pathlib
import statistics

from openpyxl import load_workbook

here = pathlib.Path(__file__).parent
wood = {"FFFF00": 25, "FFC000": 50, "FF0000": 75, "7F3F00": 100}
n_per_lbf = 4.4482216152605
area_mm2 = 30 * 20

sheet = load_workbook(here / "wide-by-colour.xlsx", data_only=True)["Shear blocks"]
groups = []
for row in sheet.iter_rows(min_row=3):
    loads = [cell for cell in row[4:12] if cell.value is not None]
    strengths = [cell.value * n_per_lbf / area_mm2 for cell in loads]
    failures = [wood[cell.fill.fgColor.rgb[-6:]] if cell.fill.patternType == "solid" else 0 for cell in loads]
    groups.append({
        "adhesive": row[0].value, "exposure": row[1].value, "n": len(loads),
        "meanMPa": statistics.fmean(strengths), "sdMPa": statistics.stdev(strengths),
        "woodFailureMeanPercent": statistics.fmean(failures),
    })
print(json.dumps(groups, indent=0))
