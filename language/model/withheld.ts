/**
 * Thrown where a calculation reads what the file does not say, or says in a damaged way; caught where results are asked
 * for, so that a result is either right or withheld with its reason, never made from a silent default.
 */
export class Withheld extends Error {
  override readonly name = 'Withheld';
  constructor(readonly reason: string) {
    super(reason);
  }
}
