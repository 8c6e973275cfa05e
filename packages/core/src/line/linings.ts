/** What a bush is lined with, and what that stands. */
export interface Lining {
  readonly name: string;
  /** `plain` slides; `rolling` has balls or needles, to which no limit of sliding applies. */
  readonly kind: 'plain' | 'rolling';
  /** Pa, F / (d L). */
  readonly pressureLimit?: number;
  /** m/s at the shaft's surface. */
  readonly speedLimit?: number;
  /** Pa·m/s, pressure times speed, for lasting running. */
  readonly pressureSpeedLimit?: number;
  /** °C */
  readonly temperatureLimit?: number;
  /** What it must have to reach these limits. */
  readonly lubrication: string;
  /** Where the limits come from. */
  readonly source: string;
}

const HANDBOOK =
  'M. J. Neale (ed.), The Tribology Handbook, table of dry and oiled bush materials (low end of each range)';
const ELEMENTS = 'Analysis and Design of Machine Elements, table 12.5 (low end of each range)';
const SHIGLEY = 'Shigley, Mechanical Engineering Design, 9th ed., ch. 12 (from memory)';

/** Bush linings and bearings, by the name that a support's `lining` takes. */
export const LININGS = {
  'sintered bronze': lining('sintered bronze', {
    pressureLimit: 14e6, // Shigley, porous bronze, 14 MPa static (from memory)
    speedLimit: 6.1, // Shigley, 1200 ft/min (from memory)
    pressureSpeedLimit: 1.75e6,
    temperatureLimit: 65,
    lubrication: 'soaked with oil',
    source: SHIGLEY,
  }),
  'tin bronze': lining('tin bronze', {
    pressureLimit: 8e6,
    speedLimit: 3,
    pressureSpeedLimit: 15e6,
    temperatureLimit: 260,
    lubrication: 'fed with oil',
    source: ELEMENTS,
  }),
  'lead bronze': lining('lead bronze', {
    pressureLimit: 5e6,
    speedLimit: 8,
    pressureSpeedLimit: 30e6,
    temperatureLimit: 260,
    lubrication: 'fed with oil',
    source: ELEMENTS,
  }),
  // No limit of its own was found for plain brass tube with grease: that of porous bronze halved. Our assumption.
  brass: lining('brass', {
    pressureLimit: 7e6,
    speedLimit: 3,
    pressureSpeedLimit: 0.9e6,
    temperatureLimit: 65,
    lubrication: 'packed with grease',
    source: 'our assumption: about half of sintered bronze, since grease does not renew itself',
  }),
  acetal: lining('acetal', {
    pressureLimit: 10e6,
    speedLimit: 5.1, // Shigley, 1000 ft/min (from memory)
    pressureSpeedLimit: 0.105e6,
    temperatureLimit: 80,
    lubrication: 'dry or wet',
    source: SHIGLEY,
  }),
  nylon: lining('nylon', {
    pressureLimit: 10e6,
    speedLimit: 5.1,
    pressureSpeedLimit: 0.105e6,
    temperatureLimit: 80,
    lubrication: 'dry; swells in water',
    source: SHIGLEY,
  }),
  PTFE: lining('PTFE', {
    pressureLimit: 3.4e6, // Shigley, 500 psi (from memory)
    speedLimit: 0.25, // Shigley, 50 ft/min (from memory)
    pressureSpeedLimit: 0.035e6,
    temperatureLimit: 250,
    lubrication: 'dry or wet',
    source: SHIGLEY,
  }),
  'filled PTFE': lining('filled PTFE', {
    pressureLimit: 7e6,
    pressureSpeedLimit: 0.35e6,
    temperatureLimit: 250,
    lubrication: 'dry or wet',
    source: HANDBOOK,
  }),
  'filled thermoplastic': lining('filled thermoplastic', {
    pressureLimit: 10e6,
    pressureSpeedLimit: 0.035e6,
    temperatureLimit: 100,
    lubrication: 'dry or wet',
    source: HANDBOOK,
  }),
  'PTFE on bronze': lining('PTFE on bronze', {
    pressureLimit: 140e6,
    pressureSpeedLimit: 1.75e6,
    temperatureLimit: 280,
    lubrication: 'dry or oiled',
    source: 'The Tribology Handbook: PTFE and lead in sintered bronze on a steel back',
  }),
  rubber: lining('rubber', {
    pressureLimit: 0.35e6,
    speedLimit: 20,
    pressureSpeedLimit: 0.5e6,
    temperatureLimit: 65,
    lubrication: 'flooded with water; fails within seconds when dry',
    source: `${SHIGLEY}; uncertain`,
  }),
  'lignum vitae': lining('lignum vitae', {
    pressureLimit: 14e6,
    speedLimit: 10,
    pressureSpeedLimit: 0.42e6,
    temperatureLimit: 65,
    lubrication: 'flooded with water',
    source: `${SHIGLEY}; uncertain`,
  }),
  'ball bearing': rolling('ball bearing'),
  'needle bearing': rolling('needle bearing'),
} as const satisfies Readonly<Record<string, Lining>>;

/** Other usual names. */
export const LINING_SYNONYMS: Readonly<Record<string, keyof typeof LININGS>> = {
  bronze: 'tin bronze',
  'porous bronze': 'sintered bronze',
  'oil-soaked bronze': 'sintered bronze',
  POM: 'acetal',
  polyamide: 'nylon',
  'ball race': 'ball bearing',
  'rolling bearing': 'ball bearing',
  'roller bearing': 'needle bearing',
};

function lining(name: string, limits: Omit<Lining, 'name' | 'kind'>): Lining {
  return Object.freeze({ name, kind: 'plain', ...limits });
}

function rolling(name: string): Lining {
  return Object.freeze({
    name,
    kind: 'rolling',
    lubrication: 'grease or oil',
    source: 'life by its maker’s rating, not by sliding limits',
  });
}
