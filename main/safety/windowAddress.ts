// The one address that a window of the program may show.

export const SCHEME = 'tailtrace';
export const WINDOW_HOST = 'app';
export const START_PAGE = `${SCHEME}://${WINDOW_HOST}/index.html`;

/** Whether an address belongs to the program's own pages: private scheme, our host, and nothing else in front of it. */
export function isOurAddress(address: string): boolean {
  let url: URL;
  try {
    url = new URL(address);
  } catch {
    return false;
  }
  return url.protocol === `${SCHEME}:` && url.host === WINDOW_HOST && url.username === '' && url.password === '';
}
