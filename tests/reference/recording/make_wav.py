"""Writes small WAV files with three independent writers and states what they hold.

Run: python3 -m pip install numpy scipy soundfile && python3 make_wav.py
Writes wav.json beside it: base64 of each file, its rate, and its samples as the writer's own library reads them back.
"""

import base64
import io
import json
import pathlib
import wave

import numpy
import scipy
import scipy.io.wavfile
import soundfile

RATE = 8000
FRAMES = 24
turn = 2 * numpy.pi * numpy.arange(FRAMES) / FRAMES
left, right = 0.9 * numpy.sin(turn), 0.4 * numpy.cos(3 * turn)
stereo = numpy.stack([left, right], axis=1)
files = []


def add(name, data, samples, rate=RATE):
    columns = [[float(value) for value in column] for column in numpy.atleast_2d(samples.T)]
    files.append({"name": name, "base64": base64.b64encode(data).decode(), "sampleRate": rate, "channels": columns})


def by_scipy(name, samples, scale, offset=0):
    buffer = io.BytesIO()
    scipy.io.wavfile.write(buffer, RATE, samples)
    buffer.seek(0)
    _, back = scipy.io.wavfile.read(buffer)
    add(name, buffer.getvalue(), (back.astype(float) - offset) / scale)


by_scipy("scipy 8 bit", (numpy.round(stereo * 127) + 128).astype(numpy.uint8), 128, 128)
by_scipy("scipy 16 bit", numpy.round(stereo * 32767).astype(numpy.int16), 32768)
by_scipy("scipy 32 bit", numpy.round(stereo * 2147483647).astype(numpy.int32), 2147483648)
by_scipy("scipy float 32", stereo.astype(numpy.float32), 1)
by_scipy("scipy float 64", stereo, 1)

whole = numpy.round(left * 8388607).astype(int)
buffer = io.BytesIO()
with wave.open(buffer, "wb") as writer:
    writer.setnchannels(1)
    writer.setsampwidth(3)
    writer.setframerate(44100)
    writer.writeframes(b"".join(int(value).to_bytes(3, "little", signed=True) for value in whole))
add("wave module 24 bit", buffer.getvalue(), whole / 8388608, 44100)

refused = []
for container, subtype, channels in [
    ("WAV", "PCM_U8", 1), ("WAV", "PCM_24", 2), ("WAV", "FLOAT", 1), ("WAV", "DOUBLE", 2),
    ("WAVEX", "PCM_16", 2), ("WAVEX", "PCM_24", 4), ("WAVEX", "PCM_32", 1), ("WAVEX", "FLOAT", 2), ("WAVEX", "DOUBLE", 1),
    ("RF64", "PCM_16", 2), ("RF64", "PCM_24", 1), ("RF64", "FLOAT", 1),
    ("WAV", "ALAW", 1), ("WAV", "ULAW", 1), ("WAV", "MS_ADPCM", 1), ("WAV", "IMA_ADPCM", 1), ("WAV", "GSM610", 1),
]:
    samples = numpy.stack([left, right, -left, -right][:channels], axis=1)
    buffer = io.BytesIO()
    soundfile.write(buffer, samples, RATE, format=container, subtype=subtype)
    name = f"libsndfile {container} {subtype} {channels}"
    if subtype in ("ALAW", "ULAW", "MS_ADPCM", "IMA_ADPCM", "GSM610"):
        refused.append({"name": name, "base64": base64.b64encode(buffer.getvalue()).decode()})
        continue
    data = buffer.getvalue()
    back, _ = soundfile.read(io.BytesIO(data), always_2d=True)
    add(name, data, back)

versions = {"numpy": numpy.__version__, "scipy": scipy.__version__, "soundfile": soundfile.__version__, "libsndfile": soundfile.__libsndfile_version__}
target = pathlib.Path(__file__).with_name("wav.json")
target.write_text(json.dumps({"versions": versions, "files": files, "refused": refused}, indent=1) + "\n")
