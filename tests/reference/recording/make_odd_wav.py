"""Writes small WAV files that no usual library writes, packed by hand: high byte first (RIFX), and format chunks of
lengths that recorders do write: 14, 16, 17, 18, 20, 22, 40 and 42 bytes.

Run: python3 -m pip install numpy scipy && python3 make_odd_wav.py
Writes odd-wav.json beside it: base64 of each file, its rate, and the samples that were packed. scipy reads every RIFX
file back as well, and the script fails where it finds other samples.
"""

import base64
import io
import json
import math
import pathlib
import struct
import uuid
import warnings

import numpy
import scipy
import scipy.io.wavfile

RATE = 11025
FRAMES = 12
PCM, FLOAT, EXTENSIBLE = 1, 3, 0xFFFE
left = [0.9 * math.sin(2 * math.pi * i / FRAMES) for i in range(FRAMES)]
right = [0.4 * math.cos(6 * math.pi * i / FRAMES) for i in range(FRAMES)]
files = []


def chunk(order, name, body):
    return name + struct.pack(order + "I", len(body)) + body + b"\0" * (len(body) % 2)


def packed(order, tag, stored, samples):
    """Bytes of frames, and the samples as they then are: full scale is 2 to the power of the stored bits less one."""
    body, back = b"", [[] for _ in samples]
    for frame in zip(*samples):
        for column, value in zip(back, frame):
            if tag == FLOAT:
                body += struct.pack(order + ("f" if stored == 4 else "d"), value)
                column.append(struct.unpack("f", struct.pack("f", value))[0] if stored == 4 else value)
                continue
            full = 2 ** (8 * stored - 1)
            whole = round(value * (full - 1))
            # Eight bits alone are without sign.
            number = whole + 128 if stored == 1 else whole
            body += number.to_bytes(stored, "big" if order == ">" else "little", signed=stored > 1)
            column.append(whole / full)
    return body, back


def add(name, *, order="<", tag=PCM, bits=16, stored=None, channels=1, size=16, extension=b""):
    stored = stored or math.ceil(bits / 8)
    sound, samples = packed(order, tag, stored, [left, right][:channels])
    frame = stored * channels
    form = struct.pack(order + "HHIIHH", EXTENSIBLE if size >= 40 else tag, channels, RATE, RATE * frame, frame, bits)
    form = (form + extension)[:size]
    assert len(form) == size, name
    mark = b"RIFX" if order == ">" else b"RIFF"
    body = b"WAVE" + chunk(order, b"fmt ", form) + chunk(order, b"data", sound)
    data = mark + struct.pack(order + "I", len(body)) + body
    files.append(
        {"name": name, "base64": base64.b64encode(data).decode(), "sampleRate": RATE, "channels": samples}
    )
    if order == ">" and stored in (1, 2, 4, 8):
        check_by_scipy(name, data, samples, tag, stored)


def check_by_scipy(name, data, samples, tag, stored):
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        rate, back = scipy.io.wavfile.read(io.BytesIO(data))
    scale, rest = (1, 0) if tag == FLOAT else (2 ** (8 * stored - 1), 128 if stored == 1 else 0)
    read = (numpy.atleast_2d(back.astype(float).T) - rest) / scale
    assert rate == RATE and numpy.array_equal(read, numpy.array(samples)), name


def extensible(order, tag, valid, channels):
    guid = uuid.UUID(f"{tag:08x}-0000-0010-8000-00aa00389b71")
    return struct.pack(order + "HHI", 22, valid, (1 << channels) - 1) + (guid.bytes if order == ">" else guid.bytes_le)


add("RIFX 8 bit", order=">", bits=8)
add("RIFX 16 bit stereo", order=">", channels=2)
add("RIFX 24 bit", order=">", bits=24)
add("RIFX 32 bit stereo", order=">", bits=32, channels=2)
add("RIFX float 32", order=">", tag=FLOAT, bits=32)
add("RIFX float 64 stereo", order=">", tag=FLOAT, bits=64, channels=2)
add("RIFX extensible 24 bit", order=">", bits=24, size=40, extension=extensible(">", PCM, 24, 1))
add("RIFX format of 18 bytes", order=">", size=18, extension=struct.pack(">H", 0))

add("format of 14 bytes, 16 bit", size=14)
add("format of 14 bytes, 8 bit stereo", size=14, bits=8, channels=2)
add("format of 17 bytes", size=17, extension=b"\0")
add("format of 18 bytes, 24 bit stereo", size=18, bits=24, channels=2, extension=struct.pack("<H", 0))
add("format of 18 bytes, float 32", size=18, tag=FLOAT, bits=32, extension=struct.pack("<H", 0))
add("format of 18 bytes that promises more", size=18, extension=struct.pack("<H", 22))
add("format of 20 bytes", size=20, extension=struct.pack("<HH", 2, 0))
add("format of 22 bytes, 8 bit", size=22, bits=8, extension=struct.pack("<HI", 4, 1))
add("extensible, 42 bytes", size=42, channels=2, extension=extensible("<", PCM, 16, 2) + b"\0\0")
add("extensible, 20 of 24 bits", size=40, bits=24, extension=extensible("<", PCM, 20, 1))
add("extensible float 64", size=40, tag=FLOAT, bits=64, extension=extensible("<", FLOAT, 64, 1))
add("12 bits in two bytes", bits=12, stored=2)
add("24 bits in four bytes, stereo", bits=24, stored=4, channels=2)

versions = {"numpy": numpy.__version__, "scipy": scipy.__version__}
target = pathlib.Path(__file__).with_name("odd-wav.json")
target.write_text(json.dumps({"versions": versions, "files": files}, indent=1) + "\n")
