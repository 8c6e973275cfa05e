"""Writes small zips with Python's zipfile, as phones' loggers pack them, and states what their files hold.

Run: python3 make_zip.py
Writes zip.json beside it: base64 of each zip, and the axes of the file that must be read, as written into it.
"""

import base64
import io
import json
import math
import pathlib
import zipfile

RATE, ROWS = 100, 120


def axes(scale):
    return [
        [round(scale * math.sin(2 * math.pi * 11 * i / RATE), 4) for i in range(ROWS)],
        [round(scale * 0.5 * math.cos(2 * math.pi * 17 * i / RATE), 4) for i in range(ROWS)],
        [round(9.81 + 0.1 * math.sin(2 * math.pi * 5 * i / RATE), 4) for i in range(ROWS)],
    ]


def csv(columns, head="seconds_elapsed,x,y,z"):
    rows = [",".join([f"{i / RATE:.4f}", *(f"{column[i]:.4f}" for column in columns)]) for i in range(ROWS)]
    return "\n".join([head, *rows]) + "\n"


def pack(files, method=zipfile.ZIP_DEFLATED, comment=b""):
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", method) as archive:
        for name, text in files.items():
            archive.writestr(zipfile.ZipInfo(name, (2020, 1, 1, 0, 0, 0)), text, method)
        archive.comment = comment
    return base64.b64encode(buffer.getvalue()).decode()


acc, gyro, linear = axes(0.8), axes(0.3), axes(0.1)
location = "seconds_elapsed,latitude,longitude\n0.0,1.0,2.0\n1.0,1.0,2.0\n2.0,1.0,2.0\n3.0,1.0,2.0\n"
phone = {
    "Metadata.csv": "key,value\nversion,1\n",
    "Gyroscope.csv": csv(gyro),
    "trial/Linear Acceleration.csv": csv(linear),
    "Location.csv": location,
    "Accelerometer.csv": csv(acc),
    "__MACOSX/._Accelerometer.csv": "x" * 40,
}
files = [
    {"name": "one file a sensor, deflated", "base64": pack(phone), "entry": "Accelerometer.csv", "axes": acc},
    {"name": "stored, with a comment", "base64": pack(phone, zipfile.ZIP_STORED, b"by a logger"), "entry": "Accelerometer.csv", "axes": acc},
    {"name": "nameless file", "base64": pack({"export_1.csv": csv(acc)}), "entry": "export_1.csv", "axes": acc},
    {
        "name": "German names, positions larger than the rest",
        "base64": pack({"Standort.csv": "t,lat,lon\n" + "0.0,1.0,2.0\n" * 900, "Beschleunigung.csv": csv(acc)}),
        "entry": "Beschleunigung.csv",
        "axes": acc,
    },
]
others = {
    "workbook": pack({"[Content_Types].xml": "<a/>", "xl/workbook.xml": "<b/>"}),
    "pictures": pack({"one.jpg": "abc", "two.png": "def"}),
    "bomb": pack({"Accelerometer.csv": b"0" * 30_000_000}),
}
target = pathlib.Path(__file__).with_name("zip.json")
result = {"rate": RATE, "files": files, "gyroscope": gyro, "others": others}
target.write_text(json.dumps(result, indent=1) + "\n")
