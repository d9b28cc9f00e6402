import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { answerWithFile, windowFiles, windowFilesSchema } from '../../../../main/safety/windowFiles.ts';

const FILES = windowFiles('/program/renderer', ['index.html', 'main.js', 'fonts/a-400.woff2']);

/** What a request is answered with, and which paths were read for it. */
async function ask(url: string, method = 'GET') {
  const read: string[] = [];
  const answer = await answerWithFile(FILES, { url, method }, async (path) => {
    read.push(path);
    return Buffer.from('bytes');
  });
  return {
    status: answer.status,
    type: answer.headers['content-type'],
    body: Buffer.from(answer.body).toString(),
    read,
  };
}

describe('T-EL-18: the private scheme', () => {
  it.each([
    ['tailtrace://app/index.html', '/program/renderer/index.html', 'text/html; charset=utf-8'],
    ['tailtrace://app/main.js?x=1#y', '/program/renderer/main.js', 'text/javascript; charset=utf-8'],
    ['tailtrace://app/fonts/a-400.woff2', '/program/renderer/fonts/a-400.woff2', 'font/woff2'],
  ])('serves %s', async (url, path, type) => {
    expect(await ask(url)).toEqual({ status: 200, type, body: 'bytes', read: [path] });
  });

  it.each([
    'tailtrace://app/',
    'tailtrace://app/index.htm',
    'tailtrace://app/../index.html/..',
    'tailtrace://app/../../etc/passwd',
    'tailtrace://app/%2e%2e/%2e%2e/etc/passwd',
    'tailtrace://app/%252e%252e/etc/passwd',
    'tailtrace://app/fonts/%2e%2e%2fmain.js',
    'tailtrace://app/..\\..\\windows\\win.ini',
    'tailtrace://app/main.js%00.html',
    'tailtrace://app/ma\u0000in.js',
    'tailtrace://app/C:/windows/win.ini',
    'tailtrace://app//server/share/file',
    'tailtrace://app/\\\\server\\share',
    'tailtrace://app/Index.HTML',
    'tailtrace://app/main.js/',
    'tailtrace://app//main.js',
    'tailtrace://app/constructor',
    'tailtrace://app/__proto__',
    `tailtrace://app/${'a'.repeat(100_000)}`,
    'tailtrace://sheet/index.html',
    'tailtrace://app.evil/index.html',
    'tailtrace://evil@app/index.html',
    'file:///program/renderer/index.html',
    'https://app/index.html',
    'not an address',
  ])('gives nothing and reads nothing for %s', async (url) => {
    expect(await ask(url)).toMatchObject({ status: 404, body: '', read: [] });
  });

  it.each(['POST', 'PUT', 'HEAD', 'DELETE'])('answers %s with nothing', async (method) => {
    expect(await ask('tailtrace://app/index.html', method)).toMatchObject({ status: 404, read: [] });
  });

  it('for any path: what is read is on the list', async () => {
    const parts = fc.array(
      fc.constantFrom('..', '.', '%2e%2e', 'fonts', 'main.js', 'index.html', '\\', '%5c', '%00', 'a-400.woff2', ''),
    );
    await fc.assert(
      fc.asyncProperty(
        fc.oneof(
          fc.string(),
          fc.webPath(),
          parts.map((all) => all.join('/')),
        ),
        async (path) => {
          const { read } = await ask(`tailtrace://app/${path}`);
          for (const one of read) expect([...FILES.values()]).toContain(one);
        },
      ),
      { numRuns: 1000 },
    );
  });

  it('a file that has gone since it was listed is nothing too', async () => {
    const gone = () => Promise.reject(new Error('ENOENT'));
    const answer = await answerWithFile(FILES, { url: 'tailtrace://app/main.js', method: 'GET' }, gone);
    expect(answer.status).toBe(404);
  });

  it.each(['../main.js', '/etc/passwd', 'a//b.js', 'C:\\x', '.hidden', 'a/../b.js', ''])(
    'a build list with %j is refused whole',
    (name) => {
      expect(windowFilesSchema.safeParse(['index.html', name]).success).toBe(false);
    },
  );
});
