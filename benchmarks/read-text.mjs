/** Reading a text of 300 000 rows, against the parser alone on the same text; and how the time grows. */
import { createRequire } from 'node:module';
import { readDelimited } from '../packages/core/dist/index.js';
import { fastest, textFile } from './read-files.mjs';

const Papa = createRequire(new URL('../packages/core/package.json', import.meta.url))('papaparse');
const ROWS = 300_000;

/** The parser alone, handing its rows over in pieces and letting them go. */
function parseInPieces(text) {
  let rows = 0;
  const chunk = ({ data }) => {
    rows += data.length;
  };
  Papa.parse(text, { delimiter: ',', newline: '\n', chunkSize: 1 << 16, chunk });
  return rows;
}

for (const style of ['plain', 'quoted']) {
  const text = textFile(ROWS, style);
  const alone = fastest(() => Papa.parse(text, { delimiter: ',', newline: '\n' }));
  const pieces = fastest(() => parseInPieces(text));
  const read = fastest(() => readDelimited(text));
  console.log(
    `readDelimited, ${ROWS} rows, ${style}: ${(1000 * read).toFixed(0)} ms; papaparse alone ${(1000 * alone).toFixed(0)} ms: ratio ${(read / alone).toFixed(2)} (wanted: at most 1.30); alone in pieces that are dropped ${(1000 * pieces).toFixed(0)} ms: ${(read / pieces).toFixed(2)}`,
  );
}
const base = fastest(() => readDelimited(textFileOf(1)));
for (const times of [2, 4, 8]) {
  const seconds = fastest(() => readDelimited(textFileOf(times)));
  console.log(
    `  ${times} times the rows: ${(seconds / base).toFixed(1)} times the time, ${((1e6 * seconds) / (50_000 * times)).toFixed(2)} µs a row`,
  );
}

function textFileOf(times) {
  textFileOf.made ??= new Map();
  if (!textFileOf.made.has(times)) textFileOf.made.set(times, textFile(50_000 * times));
  return textFileOf.made.get(times);
}
