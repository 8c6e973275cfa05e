export type * from './line/types.js';
export type * from './motion/types.js';
export type * from './whirl/types.js';
export type * from './recording/types.js';
export type * from './spectrum/types.js';
export type * from './study/types.js';
export type * from './diagnosis/types.js';
