import type { Units } from './project.js';

/** A kind of quantity that a field or a figure of the page shows. */
export type ScreenQuantity =
  | 'length'
  | 'diameter'
  | 'speed'
  | 'angle'
  | 'mass'
  | 'inertia'
  | 'unbalance'
  | 'stiffness'
  | 'speed-constant'
  | 'voltage'
  | 'current'
  | 'resistance'
  | 'frequency'
  | 'share'
  | 'ratio'
  | 'count'
  | 'speed-angle'
  | 'torque'
  | 'force'
  | 'power'
  | 'stress'
  | 'angular-acceleration'
  | 'rubbing-speed'
  | 'pressure-speed';

/** One unit of the screen: how much of the SI unit it holds, its symbol, and the decimals a field shows. */
interface ScreenUnit {
  readonly holds: number;
  readonly symbol: string;
  readonly decimals: number;
}

const INCH = 0.0254;
/** kg, the international avoirdupois ounce, exact. */
const OUNCE = 0.028349523125;
/** N, the pound-force, exact. */
const POUND_FORCE = 4.4482216152605;
const RPM = Math.PI / 30;
const DEGREE = Math.PI / 180;

const METRIC: Readonly<Record<ScreenQuantity, ScreenUnit>> = {
  length: { holds: 1e-3, symbol: 'mm', decimals: 2 },
  diameter: { holds: 1e-3, symbol: 'mm', decimals: 3 },
  speed: { holds: RPM, symbol: 'rpm', decimals: 0 },
  angle: { holds: DEGREE, symbol: '°', decimals: 2 },
  mass: { holds: 1e-3, symbol: 'g', decimals: 2 },
  inertia: { holds: 1e-7, symbol: 'g·cm²', decimals: 2 },
  unbalance: { holds: 1e-6, symbol: 'g·mm', decimals: 3 },
  stiffness: { holds: 1e3, symbol: 'N/mm', decimals: 1 },
  'speed-constant': { holds: RPM, symbol: 'rpm/V', decimals: 1 },
  voltage: { holds: 1, symbol: 'V', decimals: 2 },
  current: { holds: 1, symbol: 'A', decimals: 2 },
  resistance: { holds: 1e-3, symbol: 'mΩ', decimals: 1 },
  frequency: { holds: 1, symbol: 'Hz', decimals: 1 },
  share: { holds: 1e-2, symbol: '%', decimals: 2 },
  ratio: { holds: 1, symbol: '', decimals: 3 },
  count: { holds: 1, symbol: '', decimals: 0 },
  'speed-angle': { holds: RPM * DEGREE, symbol: 'rpm × degrees', decimals: 0 },
  torque: { holds: 1e-3, symbol: 'N·mm', decimals: 1 },
  force: { holds: 1, symbol: 'N', decimals: 2 },
  power: { holds: 1, symbol: 'W', decimals: 1 },
  stress: { holds: 1e6, symbol: 'MPa', decimals: 2 },
  'angular-acceleration': { holds: 1, symbol: 'rad/s²', decimals: 0 },
  'rubbing-speed': { holds: 1, symbol: 'm/s', decimals: 2 },
  'pressure-speed': { holds: 1e6, symbol: 'MPa·m/s', decimals: 3 },
};

const IN_INCHES: Partial<Record<ScreenQuantity, ScreenUnit>> = {
  length: { holds: INCH, symbol: 'in', decimals: 3 },
  diameter: { holds: INCH, symbol: 'in', decimals: 4 },
  mass: { holds: OUNCE, symbol: 'oz', decimals: 3 },
  inertia: { holds: OUNCE * INCH ** 2, symbol: 'oz·in²', decimals: 4 },
  unbalance: { holds: OUNCE * INCH, symbol: 'oz·in', decimals: 5 },
  stiffness: { holds: POUND_FORCE / INCH, symbol: 'lbf/in', decimals: 0 },
  torque: { holds: (POUND_FORCE / 16) * INCH, symbol: 'ozf·in', decimals: 2 },
  force: { holds: POUND_FORCE, symbol: 'lbf', decimals: 2 },
  stress: { holds: (1000 * POUND_FORCE) / INCH ** 2, symbol: 'ksi', decimals: 2 },
  'rubbing-speed': { holds: (12 * INCH) / 60, symbol: 'ft/min', decimals: 0 },
  'pressure-speed': {
    holds: ((POUND_FORCE / INCH ** 2) * 12 * INCH) / 60,
    symbol: 'psi·ft/min',
    decimals: 0,
  },
};

/** The unit that a quantity is shown in. */
export function screenUnit(quantity: ScreenQuantity, units: Units): ScreenUnit {
  return (units === 'inch' ? IN_INCHES[quantity] : undefined) ?? METRIC[quantity];
}

/** An SI value in the unit of the screen. */
export function toScreen(value: number, quantity: ScreenQuantity, units: Units): number {
  return value / screenUnit(quantity, units).holds;
}

/** A value of the screen in SI. */
export function fromScreen(value: number, quantity: ScreenQuantity, units: Units): number {
  return value * screenUnit(quantity, units).holds;
}

/**
 * An SI value as a sentence or a table shows it: with its unit, and no more digits than the model deserves.
 *
 * @param value - in SI
 * @param quantity - what it is
 * @param units - metric or inch
 * @returns such as `6 200 rpm`, `13.0°`, `5 mm`, `5.8 %`
 */
export function formatFigure(value: number, quantity: ScreenQuantity, units: Units): string {
  if (!Number.isFinite(value)) return 'none';
  const { symbol } = screenUnit(quantity, units);
  const text = writeNumber(toScreen(value, quantity, units), quantity);
  if (symbol === '') return text;
  return symbol === '°' ? `${text}°` : `${text}\u00a0${symbol}`;
}

/** A screen value in digits, thousands apart by a thin space, with a true minus. */
export function writeNumber(value: number, quantity: ScreenQuantity): string {
  const size = Math.abs(coarse(value, quantity));
  const [whole = '0', fraction] = size.toFixed(sensibleDecimals(size, quantity)).split('.');
  const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, '\u202f') : whole;
  const text = fraction === undefined ? grouped : `${grouped}.${fraction}`;
  return value < 0 && /[1-9]/.test(text) ? `−${text}` : text;
}

// The model does not know a critical speed to the single rpm: from a thousand on, tens are enough.
function coarse(value: number, quantity: ScreenQuantity): number {
  const step = COARSE[quantity] ?? 0;
  return step > 0 && Math.abs(value) >= 100 * step ? Math.round(value / step) * step : value;
}

const COARSE: Partial<Record<ScreenQuantity, number>> = {
  speed: 10,
  'speed-angle': 100,
  'angular-acceleration': 10,
};

const WHOLE: readonly ScreenQuantity[] = ['speed', 'count', 'speed-angle', 'angular-acceleration'];

function sensibleDecimals(size: number, quantity: ScreenQuantity): number {
  if (WHOLE.includes(quantity)) return 0;
  if (quantity === 'angle') return 1;
  if (quantity !== 'share') return significantDecimals(size, 3);
  if (size < 0.005) return 0;
  return size < 1 ? 2 : size < 10 ? 1 : 0;
}

function significantDecimals(size: number, digits: number): number {
  if (size === 0) return 0;
  const decimals = Math.min(8, Math.max(0, digits - 1 - Math.floor(Math.log10(size))));
  const kept = size.toFixed(decimals).replace(/\.?0+$/, '');
  return kept.split('.')[1]?.length ?? 0;
}
