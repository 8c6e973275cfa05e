/** What drives an order: the universal joints, the blades, or what the caller asked for. */
export type CriticalSource = 'joints' | 'blades' | 'asked';
