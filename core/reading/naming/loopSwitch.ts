import type { Behaviour } from './behaviour.ts';
import { plainWords } from './concepts.ts';

const LOOP = /(?:^| )(?:loop|boucle|lazo|bucle|regelkreis|lambdaregelung|regelung|cl)(?: |$)/;
const STATE = /(?:^| )(?:closed|cl|fermee|cerrado|geschlossen|open|ouverte|abierto|offen)(?: |$)/;

/**
 * Whether a column about the control loop is a switch of 0 and 1. SAE J1979 (check 1.03) gives 1 to the open loop and 2 to
 * the closed one, so that a switch "closed loop" read as codes would say the opposite of what it means.
 */
export function isLoopSwitch(name: string, { finite, min, max }: Behaviour): boolean {
  const plain = plainWords(name);
  if (finite === 0 || !LOOP.test(plain) || min < 0 || max > 1) return false;
  return STATE.test(plain) || (min === 0 && max === 1);
}
