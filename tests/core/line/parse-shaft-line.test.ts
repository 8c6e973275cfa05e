import { MATERIALS, parseShaftLine, ShaftLineError, type LineFault } from '@sternline/core';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';

type Data = Record<string, unknown>;

const motorShaft = {
  name: 'motor',
  length: 0.06,
  outerDiameter: 0.005,
  material: 'carbon steel',
  supports: [{ at: 0.01 }, { at: 0.05 }],
};
const propellerShaft = {
  name: 'propeller',
  length: 0.318,
  outerDiameter: 0.005,
  material: 'stainless steel 304',
  elevation: -0.24,
  supports: [{ at: 0.02 }, { at: 0.3 }],
};
const disc = { name: 'wheel', at: 0.31, mass: 0.04, polarInertia: 4e-6, diametralInertia: 2.2e-6 };
const line = { name: 'port', shafts: [motorShaft, propellerShaft], joints: [{ kind: 'universal' }] };

const withMotorShaft = (change: Data): Data => ({
  ...line,
  shafts: [{ ...motorShaft, ...change }, propellerShaft],
});
const withShaft = (change: Data): Data => ({
  ...line,
  shafts: [motorShaft, { ...propellerShaft, ...change }],
});
const withSupport = (change: Data): Data => withShaft({ supports: [{ at: 0.02 }, { at: 0.3, ...change }] });
const withDisc = (change: Data): Data => withShaft({ discs: [{ ...disc, ...change }] });
const withMaterial = (change: Data): Data => withShaft({ material: { ...MATERIALS.brass, ...change } });
const withJoint = (change: Data): Data => ({ ...line, joints: [{ kind: 'universal', ...change }] });
const withMotor = (change: Data): Data => ({
  ...line,
  motor: { speedConstant: 50, resistance: 0.06, noLoadCurrent: 1, rotorInertia: 2e-5, ...change },
});

function faultsOf(value: unknown): readonly LineFault[] {
  try {
    parseShaftLine(value);
  } catch (error) {
    expect(error).toBeInstanceOf(ShaftLineError);
    return (error as ShaftLineError).faults;
  }
  return [];
}

describe('parseShaftLine completes', () => {
  it('what is absent with the defaults that it documents', () => {
    const parsed = parseShaftLine({
      shafts: [
        { length: 0.1, outerDiameter: 0.004, material: 'brass', supports: [{ at: 0, fixesSlope: true }] },
      ],
    });
    expect(parsed).toEqual({
      name: 'shaft line',
      shafts: [
        {
          name: 'shaft 1',
          length: 0.1,
          outerDiameter: 0.004,
          innerDiameter: 0,
          material: MATERIALS.brass,
          elevation: 0,
          plan: 0,
          yokeTwist: 0,
          supports: [{ at: 0, fixesSlope: true }],
          discs: [],
        },
      ],
      joints: [],
    });
  });

  it('joints, discs, motor and supply', () => {
    const parsed = parseShaftLine({
      ...withShaft({ discs: [{ at: 0.3, mass: 0.01 }] }),
      motor: { speedConstant: 50, resistance: 0.06, noLoadCurrent: 1 },
      supply: { voltage: 11.1 },
    });
    expect(parsed.joints).toEqual([{ kind: 'universal', mass: 0, polarInertia: 0 }]);
    expect(parsed.shafts[1]!.discs).toEqual([
      { name: 'disc', at: 0.3, mass: 0.01, polarInertia: 0, diametralInertia: 0 },
    ]);
    expect(parsed.motor!.rotorInertia).toBe(0);
    expect(parsed.supply!.resistance).toBe(0);
  });

  // A thin disc has Id = Ip/2: any table of moments of inertia.
  it('the diametral inertia of a disc as that of a thin one', () => {
    const parsed = parseShaftLine(withDisc({ polarInertia: 5e-6, diametralInertia: undefined }));
    expect(parsed.shafts[1]!.discs[0]!.diametralInertia).toBe(2.5e-6);
  });

  it('nothing that is given, 0 included, and is stable', () => {
    const full = parseShaftLine({
      ...withShaft({
        discs: [{ ...disc, unbalance: 0 }],
        runout: 0,
        tubeBore: 0.007,
        innerDiameter: 0.002,
        plan: 0.1,
      }),
      joints: [
        {
          kind: 'flexible',
          mass: 0.01,
          polarInertia: 1e-7,
          torsionalStiffness: 20,
          bendingStiffness: 3,
          maxAngle: 0.3,
          ratedTorque: 1,
          fastener: {
            kind: 'set-screw',
            size: 0.003,
            count: 2,
            flat: true,
            threadLock: false,
            seatingTorque: 0.9,
          },
        },
      ],
      motor: { speedConstant: 50, resistance: 0, noLoadCurrent: 0, rotorInertia: 0, poles: 14 },
      supply: { voltage: 11.1, resistance: 0 },
      propeller: {
        blades: 4,
        diameter: 0.048,
        pitch: 0.05,
        torqueCoefficient: 0.03,
        wetMassFactor: 1,
        wetInertiaFactor: 1.25,
      },
    });
    expect(parseShaftLine(full)).toEqual(full);
    expect(parseShaftLine(JSON.parse(JSON.stringify(full)))).toEqual(full);
    expect(full.joints[0]!.fastener!.threadLock).toBe(false);
    expect(full.shafts[1]!.runout).toBe(0);
  });

  it('by copying: the argument stays as it was and shares nothing', () => {
    const given = structuredClone(line);
    const parsed = parseShaftLine(given);
    expect(given).toEqual(line);
    expect(parsed.shafts[0]!.supports).not.toBe(given.shafts[0]!.supports);
    expect(parsed.shafts[0]!.supports[0]).not.toBe(given.shafts[0]!.supports[0]);
  });

  it('by dropping what is undefined', () => {
    const parsed = parseShaftLine(withShaft({ runout: undefined, innerDiameter: undefined }));
    expect('runout' in parsed.shafts[1]!).toBe(false);
    expect(parsed.shafts[1]!.innerDiameter).toBe(0);
  });

  it('by setting on the end what rounding put beyond it', () => {
    const parsed = parseShaftLine(
      withShaft({
        length: 0.3,
        discs: [{ at: 0.1 + 0.2, mass: 0.01 }],
        supports: [{ at: 0.1 }, { at: 0.1 + 0.2 }],
      }),
    );
    expect(parsed.shafts[1]!.discs[0]!.at).toBe(0.3);
    expect(parsed.shafts[1]!.supports[1]!.at).toBe(0.3);
  });

  it('a material of the catalogue under any usual spelling', () => {
    for (const material of ['Stainless Steel 304', 'stainless-steel-304', 'stainless steel'])
      expect(parseShaftLine(withShaft({ material })).shafts[1]!.material).toBe(
        MATERIALS['stainless steel 304'],
      );
  });
});

describe('parseShaftLine accepts lines that are extreme but possible', () => {
  it.each<[string, Data]>([
    ['a shaft of 1 µm and one of 1 km', { ...withShaft({ length: 1000 }) }],
    ['a tube with a wall of rounding', withShaft({ innerDiameter: 0.005 * (1 - 1e-12) })],
    ['a bush that fits without clearance', withSupport({ bore: 0.005 })],
    ['a bush at either end', withShaft({ supports: [{ at: 0 }, { at: 0.318 }] })],
    ['a thin disc, Ip = 2 Id', withDisc({ polarInertia: 2e-5, diametralInertia: 1e-5 })],
    ['a thin rod, Ip = 0', withDisc({ polarInertia: 0, diametralInertia: 1e-5 })],
    ['a joint at 89.9°', withShaft({ elevation: 1.569 })],
    ['a rigid joint in line', { ...withShaft({ elevation: 0.008 }), joints: [{ kind: 'rigid' }] }],
    ['a material that hardly shears', withMaterial({ shearModulus: 1e20 })],
    ['an ideal supply', { ...withMotor({ resistance: 0 }), supply: { voltage: 12, resistance: 0 } }],
    ['elastic bearings at one place', withShaft({ supports: [{ at: 0.02, radialStiffness: 1e5 }, { at: 0.02, radialStiffness: 1e5 }, { at: 0.3 }] })], // prettier-ignore
  ])('%s', (_, value) => {
    expect(faultsOf(value)).toEqual([]);
  });
});

describe('parseShaftLine refuses', () => {
  // prettier-ignore
  const refusals: [Data, string][] = [
    [withShaft({ length: 0 }), 'shafts[1].length must be a finite length in m greater than 0, got 0'],
    [withShaft({ length: -0.3 }), 'shafts[1].length must be a finite length in m greater than 0, got -0.3'],
    [withShaft({ length: Infinity }), 'shafts[1].length must be a finite length in m greater than 0, got Infinity'],
    [withShaft({ length: '0.3' }), 'shafts[1].length must be a finite length in m greater than 0, got "0.3"'],
    [withShaft({ length: undefined }), 'shafts[1].length must be a finite length in m greater than 0, got undefined'],
    [withShaft({ outerDiameter: NaN }), 'shafts[1].outerDiameter must be a finite diameter in m greater than 0, got NaN'],
    [withShaft({ innerDiameter: -0.001 }), 'shafts[1].innerDiameter must be a finite diameter in m of at least 0, got -0.001'],
    [withShaft({ innerDiameter: 0.005 }), "shafts[1].innerDiameter must be less than 0.005 (the shaft's outer diameter), got 0.005"],
    [withShaft({ tubeBore: 0.005 }), "shafts[1].tubeBore must be greater than 0.005 (the shaft's outer diameter), got 0.005"],
    [withShaft({ elevation: -14 }), 'shafts[1].elevation must be a finite angle in rad, at most one turn (2π) either way, got -14'],
    [withShaft({ yokeTwist: NaN }), 'shafts[1].yokeTwist must be a finite angle in rad, at most one turn (2π) either way, got NaN'],
    [withShaft({ runout: null }), 'shafts[1].runout must be a finite reading in m of at least 0, got null'],
    [withShaft({ name: 5 }), 'shafts[1].name must be a text, got 5'],
    [withShaft({ supports: {} }), 'shafts[1].supports must be a list of supports, got an object'],
    [withShaft({ discs: [7] }), 'shafts[1].discs[0] must be an object that describes a disc, got 7'],
    [withSupport({ at: 0.4 }), "shafts[1].supports[1].at must be from 0 to 0.318 (the shaft's length), got 0.4"],
    [withSupport({ at: -0.1 }), 'shafts[1].supports[1].at must be a finite place in m from the motor end of its shaft, of at least 0, got -0.1'],
    [withSupport({ at: 0.02 }), 'shafts[1].supports[1].at must be away from shafts[1].supports[0] (two rigid supports at one place hold no more than one, and their shares of the load are undefined), got 0.02'],
    [withSupport({ radialStiffness: 0 }), 'shafts[1].supports[1].radialStiffness must be a finite stiffness in N/m greater than 0, got 0'],
    [withSupport({ fixesSlope: 'yes' }), 'shafts[1].supports[1].fixesSlope must be true or false, got "yes"'],
    [withSupport({ bore: 0.0049 }), "shafts[1].supports[1].bore must be at least 0.005 (the shaft's outer diameter), got 0.0049"],
    [withDisc({ at: 0.319 }), "shafts[1].discs[0].at must be from 0 to 0.318 (the shaft's length), got 0.319"],
    [withDisc({ mass: -1 }), 'shafts[1].discs[0].mass must be a finite mass in kg of at least 0, got -1'],
    [withDisc({ polarInertia: 1e-5, diametralInertia: 4e-6 }), 'shafts[1].discs[0].polarInertia must be at most 0.000008 (twice the diametral inertia, which only a thin disc reaches), got 0.00001'],
    [withMaterial({ youngsModulus: 0 }), 'shafts[1].material.youngsModulus must be a finite modulus in Pa greater than 0, got 0'],
    [withMaterial({ density: -1 }), 'shafts[1].material.density must be a finite density in kg/m³ greater than 0, got -1'],
    [withMaterial({ yieldStrength: NaN }), 'shafts[1].material.yieldStrength must be a finite stress in Pa greater than 0, got NaN'],
    [withMaterial({ shearModulus: 30e9 }), "shafts[1].material.shearModulus must be greater than 35330000000 (a third of Young's modulus: Poisson's ratio is below 0.5), got 30000000000"],
    [withShaft({ material: 'brss' }), 'shafts[1].material must be a material of the catalogue: carbon steel, stainless steel 304, stainless steel 316, brass, phosphor bronze, aluminium 6061-T6, titanium Ti-6Al-4V (did you mean "brass"?), got "brss"'],
    [withShaft({ material: 7 }), 'shafts[1].material must be a name of the catalogue, or a material, got 7'],
    [withShaft({ material: undefined }), 'shafts[1].material must be a name of the catalogue, or a material, got undefined'],
    [withJoint({ kind: 'cardan' }), 'joints[0].kind must be one of universal, rigid, flexible, got "cardan"'],
    [withJoint({ mass: -1 }), 'joints[0].mass must be a finite mass in kg of at least 0, got -1'],
    [withJoint({ maxAngle: 30 }), 'joints[0].maxAngle must be an angle in rad between 0 and π/2, got 30'],
    [withJoint({ bendingStiffness: 2 }), 'joints[0].bendingStiffness must be left out (a universal joint has none: only a flexible one bends against a stiffness), got 2'],
    [withJoint({ fastener: { kind: 'glue' } }), 'joints[0].fastener.kind must be one of set-screw, clamp, pin, thread, bond, got "glue"'],
    [withJoint({ fastener: { kind: 'clamp', count: 1.5 } }), 'joints[0].fastener.count must be a whole number of at least 1, got 1.5'],
    [withShaft({ elevation: 2 }), 'joints[0] must be at an angle of less than π/2 rad (90°) between shafts[0] and shafts[1], got 2'],
    [withShaft({ elevation: Math.PI / 2 }), 'joints[0] must be at an angle of less than π/2 rad (90°) between shafts[0] and shafts[1], got 1.57079632679'],
    [{ ...withShaft({ elevation: 0.02 }), joints: [{ kind: 'rigid' }] }, 'joints[0] must be at an angle of at most 0.0087 rad (0.5°) between shafts[0] and shafts[1], since a rigid joint cannot bend, got 0.02'],
    [{ ...line, joints: [] }, 'joints must be a list of 1 (one joint between each shaft and the next), got a list of 0'],
    [{ ...line, joints: [{ kind: 'universal' }, { kind: 'universal' }] }, 'joints must be a list of 1 (one joint between each shaft and the next), got a list of 2'],
    [{ ...line, shafts: [] }, 'shafts must be a list of one or more shafts, got a list of 0'],
    [{ joints: [] }, 'shafts must be a list of shafts, got undefined'],
    [withMotor({ speedConstant: 0 }), 'motor.speedConstant must be a finite speed constant in rad/s per volt greater than 0, got 0'],
    [withMotor({ resistance: -1 }), 'motor.resistance must be a finite resistance in Ω of at least 0, got -1'],
    [withMotor({ poles: 7 }), 'motor.poles must be an even whole number of at least 2, got 7'],
    [{ ...withMotor({ noLoadCurrent: 200 }), supply: { voltage: 11.1, resistance: 0.05 } }, 'motor.noLoadCurrent must be less than 100.9 (the current that the supply drives through the motor at rest), got 200'],
    [{ ...line, supply: { voltage: 0 } }, 'supply.voltage must be a finite voltage in V greater than 0, got 0'],
    [{ ...line, propeller: { blades: 2.5, diameter: 0.05, pitch: 0.05 } }, 'propeller.blades must be a whole number from 1 to 20, got 2.5'],
    [{ ...line, propeller: { blades: 3, diameter: -0.05, pitch: 0.05 } }, 'propeller.diameter must be a finite diameter in m greater than 0, got -0.05'],
    [{ ...line, propeller: { blades: 3, diameter: 0.05, pitch: 0.05, wetMassFactor: 0.5 } }, 'propeller.wetMassFactor must be a finite factor of at least 1, got 0.5'],
    [withShaft({ outerDiamter: 0.005 }), 'shafts[1].outerDiamter must be spelt outerDiameter, got 0.005'],
    [withShaft({ yoke_twist: 0 }), 'shafts[1].yoke_twist must be spelt yokeTwist, got 0'],
    [withSupport({ stiffness: 5 }), 'shafts[1].supports[1].stiffness must be left out: a support has only at, radialStiffness, fixesSlope, angularStiffness, length, bore, lining, got 5'],
    [{ ...line, colour: 'red' }, 'colour must be left out: a shaft line has only name, shafts, joints, motor, supply, propeller, got "red"'],
  ];
  it.each(refusals.map(([value, message]) => [message, value] as const))('%s', (message, value) => {
    expect(faultsOf(value).map((fault) => fault.message)).toEqual([message]);
    expect(() => parseShaftLine(value)).toThrow(new ShaftLineError(faultsOf(value)));
    expect(() => parseShaftLine(value)).toThrow(`parseShaftLine: ${message}`);
  });

  it.each([undefined, null, 3, 'line', [], [line], true])('%j, which is no object', (value) => {
    expect(() => parseShaftLine(value)).toThrow(
      /^parseShaftLine: the line must be an object that describes a shaft line, got /,
    );
    expect(() => parseShaftLine(value)).toThrow(RangeError);
  });

  it('every fault at once, structural and physical, each with its path and the bad value', () => {
    const faults = faultsOf({
      shafts: [
        { ...motorShaft, length: -1, innerDiameter: 0.006, supports: [{ at: 0.1, bore: 0.001 }, null] },
        {
          ...propellerShaft,
          elevation: 3,
          supports: [{ at: 0.4 }, { at: NaN }],
          material: { ...MATERIALS.brass, shearModulus: 1 },
        },
      ],
      joints: [{ kind: 'universal', mass: -2 }, { kind: 'rigid' }],
      zeppelin: 1,
    });
    expect(faults.map(({ path, got }) => [path, got])).toEqual([
      ['shafts[0].length', -1],
      ['shafts[0].supports[1]', null],
      ['shafts[1].supports[1].at', NaN],
      ['joints[0].mass', -2],
      ['zeppelin', 1],
      ['shafts[0].innerDiameter', 0.006],
      ['shafts[1].material.shearModulus', 1],
      ['shafts[1].supports[0].at', 0.4],
      ['joints', expect.any(Array)],
      ['joints[0]', 3],
    ]);
    for (const { path, condition, message } of faults)
      expect(message).toContain(`${path} must be ${condition}, got `);
    const text = new ShaftLineError(faults).message;
    expect(text).toMatch(/^parseShaftLine: 10 faults\n/);
    for (const { message } of faults) expect(text).toContain(`\n  ${message}`);
  });

  it('a line that nothing holds, by the name of the part that is free', () => {
    expect(faultsOf(withMotorShaft({ supports: [] })).map((fault) => fault.message)).toEqual([
      'shafts[0].supports must be enough to hold the line sideways: shafts[0] ("motor") is free to swing about joints[0], a mechanism; give it a further support away from there, or one that fixes its slope, got a list of 0',
    ]);
  });

  it('says nothing of a mechanism where another fault leaves that open', () => {
    const faults = faultsOf({ ...withMotorShaft({ supports: [{ at: 5 }] }) });
    expect(faults.map(({ path }) => path)).toEqual(['shafts[0].supports[0].at']);
  });

  it('but names it beside a fault that has no bearing on it', () => {
    const faults = faultsOf(withMotorShaft({ supports: [], yokeTwist: NaN }));
    expect(faults.map(({ path }) => path)).toEqual(['shafts[0].yokeTwist', 'shafts[0].supports']);
  });

  it('whatever it is given, with its own error and nothing else', () => {
    fc.assert(
      fc.property(fc.anything(), (value) => {
        expect(() => parseShaftLine(value)).toThrow(ShaftLineError);
      }),
    );
  });

  it('any one broken value in a good line, at the path of that value', () => {
    const places = [
      'length',
      'outerDiameter',
      'innerDiameter',
      'elevation',
      'plan',
      'yokeTwist',
      'material',
      'supports',
    ];
    const broken = fc.constantFrom(NaN, -Infinity, null, 'x', [[]], () => 0, Symbol('s'));
    fc.assert(
      fc.property(fc.constantFrom(...places), broken, (key, value) => {
        const paths = faultsOf(withShaft({ [key]: value })).map(({ path }) => path);
        expect(paths.length).toBeGreaterThan(0);
        for (const path of paths) expect(path.startsWith(`shafts[1].${key}`)).toBe(true);
      }),
    );
  });
});
