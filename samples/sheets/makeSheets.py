"""Makes the sheets of past results in this folder with openpyxl: python3 samples/sheets/makeSheets.py

All results are invented. The wide sheet holds fifty adhesives in three conditions with eight replicates across, and the wood
failure as the colour of each load; the numbers come from a seeded generator, so the values are the same at each run.
"""
import datetime
import json
import pathlib
import random

from openpyxl import Workbook
from openpyxl.styles import Color, Font, PatternFill

here = pathlib.Path(__file__).parent
classes = ["casein", "resorcinol", "polyurethane", "epoxy", "cross-linking PVA", "urea-formaldehyde",
           "melamine", "hide glue", "hot melt", "acrylic"]
adhesives = [f"{name} {letter}{n}" for name, letter in zip(classes, "CRUEVFMHTA") for n in range(1, 6)]
conditions = ["loft", "bilge", "boil and dry"]
colours = {"FFFF00": 25, "FFC000": 50, "FF0000": 75, "7F3F00": 100}


def solid(code):
    return PatternFill("solid", fgColor=code)


def wide():
    rng = random.Random(1987)
    book = Workbook()
    sheet = book.active
    sheet.title = "Shear blocks"
    sheet.append(["Saltmarsh Boatyard School: shear blocks (invented)"])
    sheet.append(["Adhesive", "Condition", "Glued", "Broken"] + list(range(1, 9)) + ["Remark"])
    for cell in sheet[2]:
        cell.font = Font(bold=True)
    for adhesive in adhesives:
        level = rng.uniform(800, 1500)
        for condition in conditions:
            row = sheet.max_row + 1
            share = {"loft": 1.0, "bilge": 0.85, "boil and dry": 0.6}[condition]
            sheet.cell(row, 1, adhesive)
            sheet.cell(row, 2, condition)
            sheet.cell(row, 3, datetime.date(2019, 3, 14)).number_format = "d.m.yyyy"
            sheet.cell(row, 4, datetime.date(2020, 3, 16)).number_format = "d.m.yyyy"
            for replicate in range(8):
                if rng.random() < 0.03:
                    continue
                cell = sheet.cell(row, 5 + replicate, round(rng.gauss(level * share, 0.12 * level), 1))
                pick = rng.random()
                if pick > 0.5:
                    cell.fill = solid(list(colours)[min(int((pick - 0.5) * 8), 3)])
        if rng.random() < 0.2:
            sheet.cell(sheet.max_row, 13, "clamp slipped")
    book.save(here / "wide-by-colour.xlsx")
    mapping = {
        "sheet": "Shear blocks", "headerRow": 2, "layout": "row-per-group",
        "fields": {
            "adhesive": {"column": "Adhesive"}, "exposure": {"column": "Condition"},
            "jointType": {"value": "long grain to long grain"}, "wood": {"value": "beech"},
            "gluedOn": {"column": "Glued"}, "brokenOn": {"column": "Broken"},
            "load": {"unit": "lbf"}, "overlapLength": {"value": 30, "unit": "mm"},
            "overlapWidth": {"value": 20, "unit": "mm"},
            "woodFailurePercent": {"fillOf": "load", "fills": colours, "noFill": 0},
            "note": {"column": "Remark"},
        },
        "replicates": {"columns": [str(n) for n in range(1, 9)]},
    }
    (here / "wide-by-colour.map.json").write_text(json.dumps(mapping, indent=2) + "\n")


def odd():
    """Everything that a cell can be besides a plain number or text, as far as openpyxl writes it."""
    book = Workbook()
    secret = book.active
    secret.title = "Old"
    secret.append(["Number", "Load"])
    secret.append(["hidden-1", 1])
    secret.sheet_state = "hidden"
    sheet = book.create_sheet("Odd")
    sheet.append(["Number", "Adhesive", "Load", "Wood", "Broken"])
    rows = [
        (7, "casein C1", 5100, 0.25, datetime.date(2020, 2, 29)),
        ("C1-02", None, "1 020 lbf", "30 %", "1.3.2020"),
        ("C1-03", None, "5,2 kN", None, None),
        ("C1-04", "epoxy E4", "#DIV/0!", 0.1, None),
        ("C1-05", "epoxy E4", datetime.date(2024, 4, 3), 0.1, None),
        ("C1-06", "epoxy E4", "7/8 kN", 1.3, None),
        ("C1-07", "epoxy E4", True, 0, None),
    ]
    for row in rows:
        sheet.append(row)
    sheet.merge_cells("B2:B4")
    for row in range(2, 9):
        sheet.cell(row, 4).number_format = "0%"
        sheet.cell(row, 5).number_format = "yyyy-mm-dd"
    sheet["A2"].number_format = "000"
    sheet["C2"].fill = solid("FFFFFF00")
    sheet["C3"].fill = PatternFill("solid", fgColor=Color(theme=4, tint=0.5999938962981048))
    sheet["C4"].fill = PatternFill("solid", fgColor=Color(indexed=13))
    sheet["C5"].fill = PatternFill("lightUp", fgColor="FF0000")
    for row in range(12, 15):
        sheet.cell(row, 1).fill = solid("D9D9D9")
    book.save(here / "odd-cells.xlsx")

    from openpyxl.utils.datetime import CALENDAR_MAC_1904
    mac = Workbook()
    mac.epoch = CALENDAR_MAC_1904
    mac.active.append(["Number", "Broken"])
    mac.active.append(["M-1", datetime.date(1998, 7, 5)])
    mac.save(here / "from-1904.xlsx")


wide()
odd()
