/** The part of ml-regression that growth uses; the package brings no types. */
declare module 'ml-regression' {
  /** Least-squares line. */
  export class SimpleLinearRegression {
    constructor(x: readonly number[], y: readonly number[]);
    readonly slope: number;
    readonly intercept: number;
    predict(x: number): number;
  }
}
