// Columns that hold words instead of numbers and are worth having: the fuel system's status and switches.

/**
 * Status of the fuel system as the codes of SAE J1979, PID 03 (check 1.03): 1 open, not warm yet; 2 closed; 4 open by
 * load or fuel cut; 8 open by a fault; 16 closed with a sensor fault. Matched on the words an instrument writes for them.
 */
const FUEL_STATUS: readonly (readonly [RegExp, number])[] = [
  [/(?:cl|closed|geschlossen|ferm[ée]e?|cerrad[oa])[^a-z]*.*(?:fault|fehler|d[ée]faut|fallo)/, 16],
  [/(?:ol|open|offen|ouvert|abiert)[^a-z]*.*(?:fault|fail|fehler|d[ée]faut|fallo)/, 8],
  [/(?:ol|open|offen|ouvert|abiert)[^a-z]*.*(?:drive|load|decel|fuel cut|accel|driving|last|schub|charge|carga)/, 4],
  [/(?:^|[^a-z])(?:cl|closed|closed loop|geschlossen\w*|ferm[ée]e?|cerrad[oa])(?:$|[^a-z])/, 2],
  [/(?:^|[^a-z])(?:ol|open|open loop|offen\w*|ouverte?|abiert[oa])(?:$|[^a-z])/, 1],
];

const SWITCH = new Map<string, number>([
  ...(
    ['on', 'yes', 'true', 'active', 'an', 'ein', 'ja', 'wahr', 'oui', 'vrai', 'marche', 'sí', 'si', 'activo'] as const
  ).map((word) => [word, 1] as const),
  ...(['off', 'no', 'false', 'inactive', 'aus', 'nein', 'falsch', 'non', 'faux', 'arrêt', 'inactivo'] as const).map(
    (word) => [word, 0] as const,
  ),
]);

/** Number for a word of a status or a switch, or NaN. */
export function statusCode(cell: string): number {
  const text = cell.trim().toLowerCase();
  const on = SWITCH.get(text);
  if (on !== undefined) return on;
  for (const [pattern, code] of FUEL_STATUS) if (pattern.test(text)) return code;
  return Number.NaN;
}
