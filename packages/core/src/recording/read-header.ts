import { parseUnit, type Unit } from './units.js';

/** What a column's header says it holds. */
export interface Header {
  readonly quantity: Quantity;
  readonly axis: 'x' | 'y' | 'z' | undefined;
  readonly unit: Unit | undefined;
  /** The header says that gravity was taken out. */
  readonly gravityRemoved: boolean;
}

export type Quantity =
  | 'time'
  | 'acceleration'
  | 'rotation'
  | 'magnitude'
  | 'position'
  | 'frequency'
  | 'counter'
  | 'sensor'
  | 'sound'
  | 'other'
  /** An axis of no stated quantity, or no word that is known. */
  | 'unsaid';

/** English, German, French, Spanish, Italian, Dutch; accents off. */
const WORDS: readonly (readonly [Quantity, RegExp])[] = [
  ['frequency', /^(freq\w*|frek\w*|frec\w*|hz|fft|psd|spectrum|spektrum)$/],
  [
    'position',
    /^(lat|latitude|breite|breitengrad|lon|long|lng|longitude|laenge|langengrad|alt|altitude|speed|geschwindigkeit|vitesse|velocidad|velocita|snelheid|bearing|heading|position|gps|pos)$/,
  ],
  [
    'other',
    /^(magnetic|magnetometer|magnet\w*|compass|kompass|gravity|schwerkraft|gravite|gravedad|orientation|roll|pitch|yaw|azimuth|quaternion|qx|qy|qz|qw|m[xyz]|temp|temperature|temperatur|temperatura|note|notes|comment|remark|bemerkung|marker|battery|batterie|pressure|druck|humidity|light|velocity|displacement|weg)$/,
  ],
  ['rotation', /^(gyr\w*|giro\w*|rot\w*|omega|angular|dreh\w*|winkelgeschw\w*|w[xyz]|g[xyz]|dps)$/],
  [
    'magnitude',
    /^(abs|absolute?|absoluta?|assolut\w*|betrag|norme?|total|totale|gesamt|result\w*|magnitude|modul[eo]?|modulus|svm|vector|vektor|at|amag|atotal|atot|acctotal|rms)$/,
  ],
  [
    'acceleration',
    /^(a|acc|accel\w*|accélér\w*|accelero\w*|beschl\w*|acel\w*|versnel\w*|a[xyz]|acc[xyz]|accel[xyz]|[xyz]acc|[xyz]accel|gf|gf[xyz]|gforce|linear|la[xyz]?|lin|vibration|schwingung|erschutterung)$/,
  ],
  ['sound', /^(sound|audio|mic|microphone|mikrofon|schall|son|sonido|suono|geluid|left|right)$/],
  ['sensor', /^(sensor|sensors|sensorname|sensortype|type|typ|source|quelle|capteur|kind|channel|kanal)$/],
  [
    'time',
    /^(t|ts|time|times|timestamps?|zeit|zeitstempel|temps|tiempo|tempo|tijd|tijdstempel|elapsed|seconds?|sekunden|secondes|segundos|secondi|epoch|unix|stamp|datetime|date|datum|fecha|data|uhrzeit|clock|heure|hora|ora|millis|micros|milliseconds|nanoseconds|ms|sec|ns|us)$/,
  ],
  [
    'counter',
    /^(index|idx|i|n|nr|no|num|number|sample|samples|row|id|count|counter|zeile|packet|seq|sequence)$/,
  ],
];

const REMOVED =
  /\b(linear|linéaire|user|lin|la[xyz]?|without g|no g|ohne g|sans g|sin g|senza g|zonder g|gravity removed)\b/;

/**
 * Takes a column's header apart into quantity, axis and unit.
 *
 * @param text - the header as the file writes it
 */
export function readHeader(text: string): Header {
  const { body, unit } = splitUnit(text);
  const words = tokens(body);
  const axis = axisOf(words);
  const quantity = quantityOf(words, axis, unit);
  return { quantity, axis, unit, gravityRemoved: REMOVED.test(words.join(' ')) };
}

function splitUnit(text: string): { body: string; unit: Unit | undefined } {
  const bracket = /[([{]([^()[\]{}]*(?:\([^()]*\))?[^()[\]{}]*)[)\]}]\s*$/.exec(text);
  if (bracket?.[1] !== undefined) {
    const unit = parseUnit(bracket[1]);
    if (unit) return { body: text.slice(0, bracket.index), unit };
  }
  const tail = /^(.*[^\s_])(?:\s+in\s+|[\s_:/,]+)(\S+)$/.exec(text.trim());
  const unit = tail?.[2] === undefined ? undefined : parseUnit(tail[2]);
  if (unit && tail?.[1] !== undefined) return { body: tail[1], unit };
  return {
    body: text,
    unit: /^(ms|us|µs|ns|sec|millis|micros|seconds)$/i.test(text.trim()) ? parseUnit(text) : undefined,
  };
}

function tokens(text: string): string[] {
  return text
    .replace(/([a-z])([A-Z])(?=[a-z]|$)/g, '$1 $2')
    .normalize('NFD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .replace(/ß/g, 'ss')
    .split(/[^\p{L}]+/u)
    .filter((word) => word !== '');
}

function axisOf(words: readonly string[]): Header['axis'] {
  for (const word of words) {
    const match =
      /^([xyz])$/.exec(word) ??
      /^(?:a|acc|accel|acceleration|g|gf|gyro|gyr|w|m|mag|la|lin|rot|beschl)([xyz])$/.exec(word) ??
      /^([xyz])(?:acc|accel|acceleration|axis|achse|gyro|rot|mag)$/.exec(word);
    if (match) return match[1] as 'x' | 'y' | 'z';
  }
  return undefined;
}

function quantityOf(words: readonly string[], axis: Header['axis'], unit: Unit | undefined): Quantity {
  if (words.join('') === 'at') return 'magnitude';
  const found = WORDS.filter(([, pattern]) => words.some((word) => pattern.test(word))).map(
    ([quantity]) => quantity,
  );
  if (axis !== undefined) return axisQuantity(found, words, unit);
  if (found[0] === 'rotation' || found[0] === 'frequency' || found[0] === 'position') return found[0];
  if (found.includes('magnitude') || words.join('') === 'mag') return 'magnitude';
  if (found[0] !== undefined) return found[0];
  if (unit?.quantity === 'time' || unit?.quantity === 'frequency') return unit.quantity;
  return unit?.quantity === 'acceleration' ? 'acceleration' : 'unsaid';
}

function axisQuantity(
  found: readonly Quantity[],
  words: readonly string[],
  unit: Unit | undefined,
): Quantity {
  if (unit?.quantity === 'acceleration' && !found.includes('other')) return 'acceleration';
  if (unit?.quantity === 'rotation') return 'rotation';
  if (unit?.quantity === 'other' && !/^(lsb|counts?|raw)$/i.test(unit.name)) return 'other';
  if (words.includes('mag')) return 'other';
  const said = found.find(
    (quantity) => quantity === 'other' || quantity === 'rotation' || quantity === 'acceleration',
  );
  return said ?? (found.includes('position') ? 'position' : 'unsaid');
}
