// What instruments write where they have no value. Compared in lower case, without blanks around.

const MISSING = new Set(
  (
    'nan|-nan|+nan|1.#qnan|-1.#ind|null|nil|none|n/a|na|n.a.|#n/a|#na|#value!|#div/0!|inf|-inf|+inf|infinity|-infinity|' +
    '∞|-∞|+∞|−∞|' +
    '-|--|---|----|-----|–|—|?|??|???|*|**|***|****|x|xx|xxx|.|..|...|off|aus|arrêt|arret|apagado|' +
    'no data|nodata|no_data|nodta|invalid|inval|error|err|timeout|not available|notavailable|unavailable|' +
    'unknown|unsupported|not supported|notsupported|missing|void|undefined|overflow|ovl|ol.|' +
    'ungültig|keine daten|fehler|nicht verfügbar|k.a.|non disponible|nd|n.d.|indisponible|sin datos|no disponible'
  ).split('|'),
);

/** Whether a cell says in words that there is no value. The empty cell is not one of them; it says so by itself. */
export function isMissingWord(cell: string): boolean {
  return cell.length <= 16 && MISSING.has(cell.trim().toLowerCase());
}
