/** The part of ml-regression that the core uses; the package brings no types. */
declare module 'ml-regression' {
  /** Line through points whose slope is the median of the slopes of all pairs. */
  export class TheilSenRegression {
    constructor(x: readonly number[], y: readonly number[]);
    readonly slope: number;
    readonly intercept: number;
    predict(x: number): number;
  }
}
