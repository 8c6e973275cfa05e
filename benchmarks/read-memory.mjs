/**
 * Memory that reading takes, in bytes for each further byte of the file. README.md here says what is counted.
 *
 * Each file is read in a process of its own, which finds it on the disk, so that nothing but reading shows; and in two
 * sizes, since compiled code and the collector's first spaces (some 40 MB) do not grow with the file.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { textFile, wavFile } from './read-files.mjs';

const CASES = {
  CSV: (scale) => textFile(300_000 * scale),
  'CSV with every cell quoted': (scale) => textFile(300_000 * scale, 'quoted'),
  'JSON lines': (scale) => textFile(300_000 * scale, 'json'),
  'JSON list': (scale) => textFile(300_000 * scale, 'list'),
  'WAV, 16 bit': (scale) => wavFile(200 * scale),
};
const SIZES = [1, 3];
const FLAGS = ['--expose-gc', '--max-semi-space-size=2'];
const self = fileURLToPath(import.meta.url);

const [, , path] = process.argv;
if (path === undefined) measureAll();
else await measureOne(path);

function measureAll() {
  const folder = mkdtempSync(join(tmpdir(), 'read-memory-'));
  try {
    for (const [name, make] of Object.entries(CASES)) {
      const [small, large] = SIZES.map((scale) => {
        const file = join(folder, name.startsWith('WAV') ? 'file.wav' : 'file.txt');
        writeFileSync(file, make(scale));
        return JSON.parse(execFileSync(process.execPath, [...FLAGS, self, file], { encoding: 'utf8' }));
      });
      const slope = (key) => ((large[key] - small[key]) / (large.bytes - small.bytes)).toFixed(2);
      console.log(
        `${name}, ${(large.bytes / 1e6).toFixed(0)} MB: live at return ${slope('live')}, at most ${slope('peak')} at any time, garbage included (wanted: at most 4)`,
      );
    }
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function measureOne(path) {
  const { readDelimited, readWav } = await import('../packages/core/dist/index.js');
  const { file, bytes } = load(path);
  const held = live();
  forgetPeak();
  const before = process.memoryUsage.rss();
  const recording = typeof file === 'string' ? readDelimited(file) : readWav(file);
  const peak = highest() - before;
  const left = live() - held;
  // Named here, so that neither is let go before.
  console.log(JSON.stringify({ bytes, peak, live: left, kept: [file.length, recording.channels.length] }));
}

/** In a function of its own, so that nothing else than its result stays. */
function load(path) {
  const buffer = readFileSync(path);
  const file = path.endsWith('.wav') ? new Uint8Array(buffer) : buffer.toString('utf8');
  return { file, bytes: buffer.length };
}

/** Bytes that can still be reached, on the heap and in typed arrays. */
function live() {
  globalThis.gc();
  globalThis.gc();
  const { heapUsed, external } = process.memoryUsage();
  return heapUsed + external;
}

/** Where the system allows it, the peak of loading the file is forgotten; elsewhere it may hide a lower one. */
function forgetPeak() {
  try {
    writeFileSync('/proc/self/clear_refs', '5');
  } catch {
    // Not on this system.
  }
}

/** Bytes, the most that the system had given the process. */
function highest() {
  try {
    return 1024 * Number(/VmHWM:\s+(\d+)/.exec(readFileSync('/proc/self/status', 'utf8'))[1]);
  } catch {
    return 1024 * process.resourceUsage().maxRSS;
  }
}
