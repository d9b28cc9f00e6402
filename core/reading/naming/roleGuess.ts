import type { Bank, Role } from '../../capture/roles.ts';

/** What a column is taken for, before columns are weighed against each other. */
export interface RoleGuess {
  readonly role: Role;
  readonly bank: Bank;
  readonly sensor: number | null;
  /** Unit of the file's values: as the file gave it, or as it was guessed; null where it does not matter. */
  readonly unit: string | null;
  /** True where the unit is a guess from the values. */
  readonly unitGuessed: boolean;
  /** 0 to about 1.5; the best of a role keeps it. */
  readonly score: number;
  readonly certain: boolean;
  /** In words: what it rests on. */
  readonly because: string;
}

/** A column as the rules see it. */
export interface NamedColumn {
  readonly index: number;
  readonly name: string;
  readonly unit: string | null;
}

/** A column with no role of its own. */
export function otherGuess(unit: string | null, because: string, certain = true): RoleGuess {
  return { role: 'other', bank: null, sensor: null, unit, unitGuessed: false, score: 0, certain, because };
}
