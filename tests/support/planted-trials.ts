import type { Cause, Channel, ChannelUnit, Recording, ShaftLine } from '@sternline/core';
import { parseShaftLine } from '@sternline/core';

/** What tests/reference/diagnosis/plant_faults.py writes; the words are explained there. */
export interface PlantedFile {
  readonly kind: string;
  readonly lines: Readonly<Record<string, unknown>>;
  readonly criticals: Readonly<Record<string, number>>;
  readonly single: readonly PlantedSingle[];
  readonly sets: readonly PlantedSet[];
}

interface PackedChannel {
  readonly name: string;
  readonly unit: string;
  readonly step: number;
  readonly data: string;
}

interface Planted {
  readonly seed: number;
  readonly planted: readonly Cause[];
  readonly visible: boolean;
  readonly line: string | null;
  readonly rate: number;
  readonly axial: string | null;
}

export interface PlantedSingle extends Planted {
  readonly tellable: boolean;
  readonly speed: number;
  readonly channels: readonly PackedChannel[];
}

export interface PlantedSet extends Planted {
  readonly trials: readonly {
    readonly propeller: 'fitted' | 'off';
    readonly medium: 'air' | 'water';
    readonly jointTurned: number;
    readonly speed: number;
    readonly channels: readonly PackedChannel[];
  }[];
}

export function plantedLines({ lines }: PlantedFile): Record<string, ShaftLine> {
  return Object.fromEntries(Object.entries(lines).map(([name, line]) => [name, parseShaftLine(line)]));
}

/** Samples from whole numbers of 16 bits, base64. */
export function unpackRecording(channels: readonly PackedChannel[], rate: number): Recording {
  const unpacked = channels.map(({ name, unit, step, data }): Channel => {
    const bytes = Buffer.from(data, 'base64');
    const samples = Float64Array.from(
      { length: bytes.length / 2 },
      (_, n) => step * bytes.readInt16LE(2 * n),
    );
    return { name, unit: unit as ChannelUnit, samples };
  });
  return {
    name: 'planted',
    sampleRate: rate,
    channels: unpacked,
    sampling: {
      kind: unpacked[0]?.unit === 'full scale' ? 'sound' : 'motion',
      duration: (unpacked[0]?.samples.length ?? 0) / rate,
      rateFrom: 'given',
      jitter: 0,
      stampStep: 0,
      gaps: [],
      equalStamps: 0,
      unsortedRows: 0,
      badCells: { count: 0, lines: [] },
      clipping: [],
      columns: [],
      notes: [],
    },
  };
}
