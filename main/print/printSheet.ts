// Sheets on paper and as PDF: shown in a window that nobody sees, that runs no script and reaches nothing, and printed
// from there.

import { BrowserWindow, type PrintToPDFOptions, type Session, session } from 'electron';
import { SHEET_POLICY, safeHeaders } from '../safety/contentPolicy.ts';
import { lockSession } from '../safety/lockSession.ts';
import { response } from '../safety/privateScheme.ts';
import { SCHEME } from '../safety/windowAddress.ts';

export type Paper = 'A4' | 'Letter';

const SHEET_PAGE = `${SCHEME}://sheet/`;

/** Pages that are not laid out by then never will be: a sheet has tens of pages, and a page takes milliseconds. */
const LIMIT_MS = 45_000;

/** Stands in the lower margin, for which the sheet itself leaves room; the title names the vehicle. */
const FOOT =
  '<div style="width:100%;padding:0 10.5mm;display:flex;justify-content:space-between;' +
  'font:8px sans-serif;color:#444"><span class="title"></span>' +
  '<span>Page <span class="pageNumber"></span> of <span class="totalPages"></span></span></div>';

/** Options of newer runtimes are passed over by older ones. */
function pdfOptions(paper: Paper): PrintToPDFOptions {
  return {
    pageSize: paper,
    printBackground: true,
    displayHeaderFooter: true,
    headerTemplate: '<span></span>',
    footerTemplate: FOOT,
    generateTaggedPDF: true,
    generateDocumentOutline: true,
  };
}

/** The sheet as a PDF document with page numbers. Rejects where the runtime cannot print it. */
export function sheetToPdf(html: string, paper: Paper): Promise<Uint8Array> {
  return withSheet(html, (window) => inTime(window.webContents.printToPDF(pdfOptions(paper))));
}

/** Opens the system's print dialog for the sheet. Resolves with null, or with why it was not printed. */
export function sheetToPaper(html: string, paper: Paper): Promise<string | null> {
  return withSheet(
    html,
    (window) =>
      new Promise((resolve) => {
        window.webContents.print({ pageSize: paper, printBackground: true }, (done, reason) => {
          resolve(done || /cancel/i.test(reason) ? null : reason);
        });
      }),
  );
}

async function withSheet<T>(html: string, print: (window: BrowserWindow) => Promise<T>): Promise<T> {
  const window = new BrowserWindow({
    show: false,
    webPreferences: {
      session: sheetSession(html),
      javascript: false,
      sandbox: true,
      contextIsolation: true,
      nodeIntegration: false,
      webviewTag: false,
      spellcheck: false,
    },
  });
  try {
    await window.loadURL(SHEET_PAGE);
    return await print(window);
  } finally {
    window.destroy();
  }
}

/** Rejects where the pages do not come; the window is then taken away, and its process with it. */
async function inTime<T>(pages: Promise<T>): Promise<T> {
  let timer: NodeJS.Timeout | undefined;
  const late = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error('The sheet was not laid out in time.')), LIMIT_MS);
  });
  try {
    return await Promise.race([pages, late]);
  } finally {
    clearTimeout(timer);
  }
}

let sheets = 0;

/** A session of its own for each sheet, in memory, that serves this one page. */
function sheetSession(html: string): Session {
  const own = session.fromPartition(`sheet-${++sheets}`);
  lockSession(own);
  const body = Buffer.from(html, 'utf8');
  const headers = safeHeaders('text/html; charset=utf-8', SHEET_POLICY);
  own.protocol.handle(SCHEME, ({ url }) =>
    response(url === SHEET_PAGE ? { status: 200, headers, body } : { status: 404, headers, body: Buffer.alloc(0) }),
  );
  return own;
}
