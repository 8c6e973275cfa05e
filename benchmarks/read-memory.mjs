/**
 * Memory that reading takes beside the file itself: bytes of memory for each further byte of the file.
 *
 * Each size is read in a process of its own, and the growth of what the system has given the process is taken at its
 * highest, garbage included. Two sizes are set against each other, since compiled code and the collector's first
 * spaces (some 40 MB) do not grow with the file.
 */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { textFile, wavFile } from './read-files.mjs';

const CASES = {
  CSV: (scale) => textFile(300_000 * scale),
  'CSV with every cell quoted': (scale) => textFile(300_000 * scale, 'quoted'),
  'JSON lines': (scale) => textFile(300_000 * scale, 'json'),
  'JSON list': (scale) => textFile(300_000 * scale, 'list'),
  'WAV, 16 bit': (scale) => wavFile(200 * scale),
};
const self = fileURLToPath(import.meta.url);

async function measure(name, scale) {
  const { readDelimited, readWav } = await import('../packages/core/dist/index.js');
  const made = CASES[name](scale);
  // A string made by joining is laid out anew when it is first read through.
  const file = typeof made === 'string' ? Buffer.from(made).toString('utf8') : made;
  if (typeof file === 'string') file.charCodeAt(file.length - 1);
  globalThis.gc();
  globalThis.gc();
  const before = process.memoryUsage.rss();
  const recording = typeof file === 'string' ? readDelimited(file) : readWav(file);
  const peak = 1024 * process.resourceUsage().maxRSS - before;
  const bytes = typeof file === 'string' ? Buffer.byteLength(file) : file.length;
  console.log(JSON.stringify({ peak, bytes, channels: recording.channels.length }));
}

function childFor(name, scale) {
  const flags = ['--expose-gc', '--max-semi-space-size=2'];
  return JSON.parse(execFileSync(process.execPath, [...flags, self, name, scale], { encoding: 'utf8' }));
}

const [, , name, scale] = process.argv;
if (name) await measure(name, Number(scale));
else
  for (const each of Object.keys(CASES)) {
    const [small, large] = [childFor(each, 1), childFor(each, 3)];
    const slope = (large.peak - small.peak) / (large.bytes - small.bytes);
    console.log(
      `${each}, ${(large.bytes / 1e6).toFixed(0)} MB: ${slope.toFixed(2)} bytes for each byte of the file (wanted: at most 4)`,
    );
  }
