import { Blob } from 'node:buffer';
import { ClipboardItem, clipboard, nativeImage } from 'electron';

export async function copyText(text: string): Promise<void> {
  await clipboard.writeText(text);
}

/** Puts a picture on the clipboard. The current runtime takes pictures as the web does; older ones had a function for it. */
export async function copyPicture(png: Uint8Array): Promise<void> {
  if (ClipboardItem !== undefined) {
    const picture = new Blob([png], { type: 'image/png' });
    await clipboard.write([new ClipboardItem({ 'image/png': picture })]);
    return;
  }
  const writeImage: unknown = Reflect.get(clipboard, 'writeImage');
  if (typeof writeImage === 'function') writeImage.call(clipboard, nativeImage.createFromBuffer(Buffer.from(png)));
}
