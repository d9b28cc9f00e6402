import { ROLE_FACTS } from '../../capture/roles.ts';
import { conversion } from '../../units/convert.ts';
import { type Behaviour, contradiction } from './behaviour.ts';
import { fileHabits } from './fileHabits.ts';
import { guessRole } from './guessRole.ts';
import { type NamedColumn, otherGuess, type RoleGuess } from './roleGuess.ts';

/** A column's guess after all columns were weighed against each other. */
export interface AssignedRole extends RoleGuess {
  /** Why the values contradict the role that the name promised; the role is then 'other'. */
  readonly questioned: string | null;
}

/**
 * Roles of all columns of a file. For each role, bank and sensor only the best column keeps it; the others become
 * 'other'. A role that its own values contradict is taken away and questioned. `behaviours` is parallel to `columns`.
 */
export function assignRoles(columns: readonly NamedColumn[], behaviours: readonly Behaviour[]): AssignedRole[] {
  const habits = fileHabits(columns, behaviours);
  const guesses = columns.map((column, i) => guessRole(column, behaviours[i] ?? NOTHING, habits));
  const placed = placeSensors(guesses);
  const best = new Map<string, number>();
  const tied = new Set<string>();
  placed.forEach((guess, i) => {
    if (guess.role === 'other') return;
    const key = `${guess.role} ${guess.bank} ${guess.sensor}`;
    const other = best.get(key);
    if (other !== undefined && isSensor(guess) && equals(guess, placed[other], behaviours[i], behaviours[other]))
      tied.add(key);
    if (other === undefined || betterThan(guess, placed[other], behaviours[i], behaviours[other])) best.set(key, i);
  });
  return placed.map((guess, i) => {
    if (guess.role === 'other') return { ...guess, questioned: guess.certain ? null : guess.because };
    const key = `${guess.role} ${guess.bank} ${guess.sensor}`;
    if (best.get(key) !== i)
      return {
        ...otherGuess(guess.unit, `another column serves better as ${ROLE_FACTS[guess.role].words.toLowerCase()}`),
        questioned: null,
      };
    const alone = tied.has(key)
      ? { ...guess, certain: false, because: `${guess.because}, as of another column` }
      : guess;
    const asked = question(alone, behaviours[i] ?? NOTHING);
    // A wideband sensor reports a voltage of its own beside its air ratio; nobody need be asked about it.
    const wideband = asked.questioned !== null && best.has(`upstreamLambda ${guess.bank} ${guess.sensor}`);
    return wideband ? { ...otherGuess(guess.unit, 'the voltage of a wideband sensor'), questioned: null } : asked;
  });
}

/** Nothing but their order tells two columns of one sensor apart. */
function equals(
  a: RoleGuess,
  b: RoleGuess | undefined,
  of: Behaviour | undefined,
  other: Behaviour | undefined,
): boolean {
  return (
    b !== undefined &&
    of !== undefined &&
    of.finite > 0 &&
    (other?.finite ?? 0) > 0 &&
    Math.abs(a.score - b.score) < 1e-9
  );
}

const NOTHING: Behaviour = { finite: 0, min: 0, max: 0, median: 0, distinct: 0 };

function betterThan(
  a: RoleGuess,
  b: RoleGuess | undefined,
  of: Behaviour | undefined,
  other: Behaviour | undefined,
): boolean {
  if ((of?.finite ?? 0) === 0 || (other?.finite ?? 0) === 0) return (of?.finite ?? 0) > (other?.finite ?? 0);
  return b === undefined || a.score > b.score + 1e-9;
}

/**
 * Gives oxygen sensors without a number the place that is left: beside a numbered one the other place, two of them the
 * order of the file. A guess all the same, and not certain, unless there is only one thing it can be.
 */
function placeSensors(guesses: readonly RoleGuess[]): RoleGuess[] {
  const taken = new Set<string>();
  for (const guess of guesses) if (isSensor(guess) && guess.sensor !== null) taken.add(`${guess.bank} ${guess.sensor}`);
  return guesses.map((guess) => {
    if (!isSensor(guess) || guess.sensor !== null) return guess;
    const bank = guess.bank;
    const sensor = guess.role === 'upstreamLambda' || !taken.has(`${bank} 1`) ? 1 : taken.has(`${bank} 2`) ? 3 : 2;
    taken.add(`${bank} ${sensor}`);
    const certain = guess.role === 'upstreamLambda';
    return { ...guess, sensor, role: sensor === 1 ? guess.role : 'downstreamO2', certain };
  });
}

function isSensor({ role }: RoleGuess): boolean {
  return role === 'upstreamO2' || role === 'downstreamO2' || role === 'upstreamLambda';
}

function question(guess: RoleGuess, b: Behaviour): AssignedRole {
  const convert = guess.unit === null ? null : conversion(guess.unit, targetUnit(guess.role));
  const at = (value: number): number => (convert === null ? value : convert(value));
  const low = at(b.min);
  const high = at(b.max);
  const inUnit = { ...b, min: Math.min(low, high), max: Math.max(low, high), median: at(b.median) };
  const why = contradiction(guess.role, inUnit);
  if (why === null) return { ...guess, questioned: null };
  const { words } = ROLE_FACTS[guess.role];
  const because = `name says ${words.toLowerCase()}, but ${why}`;
  return { ...otherGuess(guess.unit, because, false), questioned: because };
}

/** The unit in which a role is kept, as a spelling of the table: a bare 1 of lambda is the air ratio's. */
export function targetUnit(role: RoleGuess['role']): string {
  return role === 'upstreamLambda' ? 'λ' : ROLE_FACTS[role].unit;
}
