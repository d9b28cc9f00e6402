import { shell } from 'electron';
import type { Outcome } from '../../../core/reading/problem.ts';
import { copyPicture, copyText } from '../../exports/clipboard.ts';
import { type Exported, exportFile } from '../../exports/exportFile.ts';
import { sheetToPaper, sheetToPdf } from '../../print/printSheet.ts';
import type { Handlers } from '../receive.ts';
import { exportBundle } from './exportBundle.ts';
import type { ShellTools } from './tools.ts';

type Names = 'exportFile' | 'exportPdf' | 'exportBundle' | 'printSheet' | 'showExport' | 'copyText' | 'copyPicture';

/** Everything that leaves the program: files, paper, the clipboard. */
export function exportHandlers(tools: ShellTools): Pick<Handlers, Names> {
  const { exporting } = tools;
  let last: string | null = null;

  const told = (exported: Exported | null) => {
    if (exported === null) return null;
    if (exported.problem === null) last = exported.path;
    return { name: exported.name, problem: exported.problem };
  };

  return {
    async exportFile({ suggestedName, kind, content }) {
      const bytes = typeof content === 'string' ? Buffer.from(content, 'utf8') : content;
      return told(
        await exportFile(exporting, { suggestedName, kind, content: async () => ({ ok: true, value: bytes }) }),
      );
    },
    async exportPdf({ suggestedName, html, paper }) {
      const content = () => made(sheetToPdf(html, paper));
      return told(await exportFile(exporting, { suggestedName, kind: 'pdf', content }));
    },
    async exportBundle(wish) {
      const made = await exportBundle(tools, wish);
      const reply = told(made.exported);
      return reply === null ? null : { ...reply, manifestSha256: made.manifestSha256 };
    },
    async printSheet({ html, paper }) {
      const why = await sheetToPaper(html, paper);
      return { problem: why === null ? null : notPrinted() };
    },
    showExport() {
      if (last !== null) shell.showItemInFolder(last);
      return null;
    },
    async copyText({ text }) {
      await copyText(text);
      return null;
    },
    async copyPicture({ png }) {
      await copyPicture(png);
      return null;
    },
  };
}

function made(pages: Promise<Uint8Array>): Promise<Outcome<Uint8Array>> {
  return pages.then(
    (value): Outcome<Uint8Array> => ({ ok: true, value }),
    () => ({ ok: false, problem: notMade() }),
  );
}

const notMade = () => ({
  id: 'notMade',
  what: 'The pages of the sheet could not be laid out.',
  where: 'the PDF document',
  doNext: 'Export the sheet as a web page, and print it from a browser.',
});

const notPrinted = () => ({
  id: 'notPrinted',
  what: 'The sheet was not printed.',
  where: 'the printer',
  doNext: 'Look whether a printer is set up and switched on, or export the sheet as PDF.',
});
