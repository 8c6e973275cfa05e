// Reads all seeded trials and writes docs/reading-trials.md: pnpm report:reading. Takes a few minutes.
import { readFileSync, writeFileSync } from 'node:fs';
import { format, resolveConfig } from 'prettier';
import { startVitest } from 'vitest/node';

process.env.STERNLINE_REPORT = 'reading';
const vitest = await startVitest('test', ['tests/core/orders/reading-trials.test.ts'], {
  project: ['core'],
  watch: false,
});
await vitest?.close();
for (const path of ['docs/reading-trials.md', 'tests/reference/orders/reading-trials.json']) {
  const options = { ...(await resolveConfig(path)), filepath: path };
  writeFileSync(path, await format(readFileSync(path, 'utf8'), options));
}
