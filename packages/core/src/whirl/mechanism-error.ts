/** A shaft line that is not held: a part of it can move without bending anything. */
export class MechanismError extends Error {
  /** Index of the shaft that moves. */
  readonly shaft: number;

  constructor(where: string, { shaft, name }: { readonly shaft: number; readonly name: string }) {
    super(
      `${where} must hold every part in place, got a line whose shaft ${shaft} (${JSON.stringify(name)}) is free to move`,
    );
    this.name = 'MechanismError';
    this.shaft = shaft;
  }
}
