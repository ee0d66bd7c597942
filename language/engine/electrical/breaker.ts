import type { Edition } from '../../codes/index.js';

/** Amperes that a rating may be exceeded by for want of digits. */
const HAIR = 1e-9;

export const isStandardRating = (rating: number, { conductors }: Edition): boolean =>
  conductors.standardRatings.ratings.includes(rating);

/** Smallest standard rating that is not below `current`, A; undefined above the list. */
export const standardRatingFrom = (current: number, { conductors }: Edition): number | undefined =>
  conductors.standardRatings.ratings.find(rating => rating >= current - HAIR);

/** Largest standard rating that is not above `current`, A; undefined below the list. */
export const standardRatingUpTo = (current: number, { conductors }: Edition): number | undefined =>
  conductors.standardRatings.ratings.findLast(rating => rating <= current + HAIR);
