// What the names of entries in a zip archive tell.

/** Endings of files that cannot be recordings and are passed over in an archive. */
const NEVER = /(?:\.(?:png|jpe?g|gif|bmp|svg|pdf|docx?|html?|xml|json|md|ini|cfg|exe|dll|zip|gz|7z|mp4|avi|db)|\/)$/i;

/** False for entries that cannot be recordings, by their ending or because a system left them for itself. */
export function couldBeRecording(entry: string): boolean {
  return !NEVER.test(entry) && !isHidden(entry);
}

/** Entries by which spreadsheets of the two open office forms are known; both are zip archives. */
export function isSpreadsheet(entry: string): boolean {
  return entry === '[Content_Types].xml' || entry.startsWith('xl/') || entry === 'mimetype' || entry === 'content.xml';
}

/** What systems leave for themselves in archives. */
function isHidden(entry: string): boolean {
  return entry.startsWith('__MACOSX/') || lastPart(entry).startsWith('.');
}

function lastPart(entry: string): string {
  return entry.split(/[\\/]/).pop() ?? entry;
}

/** The last part of an entry's name, cut to what fits into a sentence. */
export function shortName(entry: string): string {
  const last = lastPart(entry);
  return last.length > 60 ? `${last.slice(0, 59)}…` : last;
}
