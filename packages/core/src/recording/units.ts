/** A unit as a logger writes it, understood. */
export interface Unit {
  readonly name: string;
  readonly quantity: 'time' | 'acceleration' | 'rotation' | 'sound' | 'frequency' | 'other';
  /** To s, m/s² or rad/s; 1 for the rest. */
  readonly factor: number;
}

/** Standard acceleration of free fall, m/s². BIPM, The International System of Units, 9th edition 2019 (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;

const SECONDS =
  's sec secs second seconds sek sekunde sekunden seconde secondes seconden segundo segundos secondo secondi';
const MILLISECONDS =
  'ms msec msecs milli millis millisecond milliseconds millisekunden millisecondes milisegundos millisecondi milliseconden';
const MICROSECONDS =
  'µs us usec usecs micros microsecond microseconds mikrosekunden microsecondes microsegundos';
const NANOSECONDS = 'ns nsec nanos nanosecond nanoseconds nanosekunden nanosecondes nanosegundos';

const UNITS: ReadonlyMap<string, Unit> = new Map([
  ...entries(SECONDS, { name: 's', quantity: 'time', factor: 1 }),
  ...entries(MILLISECONDS, { name: 'ms', quantity: 'time', factor: 1e-3 }),
  ...entries(MICROSECONDS, { name: 'µs', quantity: 'time', factor: 1e-6 }),
  ...entries(NANOSECONDS, { name: 'ns', quantity: 'time', factor: 1e-9 }),
  ...entries('min minute minutes minuten minuti minutos', { name: 'min', quantity: 'time', factor: 60 }),
  ...entries('m/s2 m/s/s ms-2 m.s-2 m*s-2 mps2 m/sec2 m/s**2 m/s-2 m/s?', {
    name: 'm/s²',
    quantity: 'acceleration',
    factor: 1,
  }),
  ...entries('g gs gn g0 g-force gforce', { name: 'g', quantity: 'acceleration', factor: STANDARD_GRAVITY }),
  ...entries('mg milli-g millig mgs', {
    name: 'mg',
    quantity: 'acceleration',
    factor: STANDARD_GRAVITY / 1000,
  }),
  ...entries('cm/s2 gal', { name: 'cm/s²', quantity: 'acceleration', factor: 0.01 }),
  ...entries('mm/s2', { name: 'mm/s²', quantity: 'acceleration', factor: 0.001 }),
  ...entries('ft/s2', { name: 'ft/s²', quantity: 'acceleration', factor: 0.3048 }),
  ...entries('rad/s rads rad/sec rads-1 rad.s-1', { name: 'rad/s', quantity: 'rotation', factor: 1 }),
  ...entries('deg/s °/s º/s dps deg/sec grad/s °s-1 degs', {
    name: 'deg/s',
    quantity: 'rotation',
    factor: Math.PI / 180,
  }),
  ...entries('hz khz', { name: 'Hz', quantity: 'frequency', factor: 1 }),
  ...entries('fs fullscale', { name: 'full scale', quantity: 'sound', factor: 1 }),
  ...entries(
    'm/s km/h kn kt knots m km mm cm deg ° rad µt ut t v mv volt lsb count counts raw pa hpa db % °c mm/s',
    {
      name: '',
      quantity: 'other',
      factor: 1,
    },
  ),
]);

/**
 * Understands a unit as it stands in a head or a units row.
 *
 * @param text - the unit alone, without brackets
 * @returns the unit; undefined where the text is none
 */
export function parseUnit(text: string): Unit | undefined {
  const plain = text
    .trim()
    .replace(/µ|μ/g, 'µ')
    .replace(/Â(?=[²°µ])/g, '')
    .replace(/[⁻−–]/g, '-')
    .replace(/[²]/g, '2')
    .replace(/[·⋅×]/g, '.')
    .replace(/[\s^_()[\]{}]/g, '')
    .toLowerCase();
  const unit = UNITS.get(plain) ?? (/^m\/s[^a-z\d/-]+2?$/.test(plain) ? UNITS.get('m/s2') : undefined);
  return unit?.name === '' ? { ...unit, name: text.trim() } : unit;
}

function entries(words: string, unit: Unit): [string, Unit][] {
  return words.split(' ').map((word) => [word, unit]);
}
