/**
 * Standard ratings of breakers and fuses, A. Source: NEC 240.6(A) up to 400 A, seen quoted; 450 to 600 A from memory.
 * CEC Table 13 has the same steps, from memory.
 */
export const standardRatings: readonly number[] = [
  15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500, 600,
];

/** The 10 A rating came into the list in 2023, from memory. */
export const standardRatingsWithTen: readonly number[] = [10, ...standardRatings];
