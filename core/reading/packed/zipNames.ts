// What the names of entries in a zip archive tell.

/** Endings of files that cannot be recordings and are passed over in an archive. */
const NEVER = /(?:\.(?:png|jpe?g|gif|bmp|svg|pdf|docx?|html?|xml|json|md|ini|cfg|exe|dll|zip|gz|7z|mp4|avi|db)|\/)$/i;

/** Texts that explain what else is in an archive. */
const EXPLAINS = /^(?:read[ _-]?me|licen[cs]e|copying|change[ _-]?log|lies[ _-]?mich|lisez[ _-]?moi|leeme)\b.*$/i;

/** False for entries that cannot be recordings, by their ending or because a system left them for itself. */
export function couldBeRecording(entry: string): boolean {
  return !NEVER.test(entry) && !isHidden(entry) && !EXPLAINS.test(lastPart(entry));
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

/** An entry's name with its folders, cut to what fits into a sentence: two folders may hold files of one name. */
export function shortName(entry: string): string {
  return entry.length > 60 ? `…${entry.slice(-59)}` : entry;
}
