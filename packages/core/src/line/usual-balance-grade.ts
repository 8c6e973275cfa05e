/**
 * Balance grade of discs that give no unbalance of their own: ISO 21940-11 for cardan and propeller shafts of special demand.
 * e·Ω in mm/s. From memory.
 */
export const USUAL_BALANCE_GRADE = 16;
