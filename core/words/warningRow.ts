/** Where to look in an editor: "Row 2003.", "First in row 2003." for what concerns several; empty where no row is known. */
export function warningRow({ row, count }: { readonly row: number | null; readonly count: number }): string {
  if (row === null) return '';
  return count === 1 ? `Row ${row}.` : `First in row ${row}.`;
}
