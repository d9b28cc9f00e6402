/** What decisions cost, in one currency; the person's settings. */
export interface DecisionCosts {
  /** A converter, fitted. */
  readonly converterPrice: number;
  readonly labourHour: number;
}

/** Taken where the person has set nothing: any currency, since only their proportion counts (common practice, no source). */
export const USUAL_COSTS: DecisionCosts = { converterPrice: 1200, labourHour: 90 };

/** Share of a converter's price that letting a dead one pass costs in the end; the other error is the worse one. */
const COMES_BACK = 0.4;

/** What condemning a sound converter costs: the part, and an hour and a half for nothing. */
export function costOfCondemning({ converterPrice, labourHour }: DecisionCosts): number {
  return converterPrice + 1.5 * labourHour;
}

/** What letting a dead converter pass costs: the car comes back. */
export function costOfClearing({ converterPrice, labourHour }: DecisionCosts): number {
  return COMES_BACK * converterPrice + 2 * labourHour;
}
