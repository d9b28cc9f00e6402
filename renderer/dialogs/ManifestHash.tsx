import { Copy } from 'lucide-react';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';

/** The hash by which two people can tell whether they hold the same bundle, whole. */
export function ManifestHash({ sha256 }: { readonly sha256: string }) {
  const program = useProgram();
  const copy = async (): Promise<void> => {
    await program.shell.copyText({ text: sha256 });
    program.notices.getState().say('The hash is on the clipboard.');
  };
  return (
    <div className="manifestHash">
      <div>
        <p className="soft">Hash of its manifest (SHA-256)</p>
        <p>
          <code data-manifest={sha256}>{sha256}</code>
        </p>
      </div>
      <Button icon={Copy} label="Copy the hash" onPress={() => void copy()}>
        Copy
      </Button>
    </div>
  );
}
