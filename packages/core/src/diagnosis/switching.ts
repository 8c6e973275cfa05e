/** Hz above which a steady line is taken for a motor controller's switching and not for a part that rings; common practice. */
export const SWITCHING = 4000;
