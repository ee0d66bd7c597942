/** Below five air changes an hour at 50 Pa a dwelling needs mechanical ventilation: IRC R303.4, from memory. In 1/s. */
export const TIGHT = 5 / 3600;
