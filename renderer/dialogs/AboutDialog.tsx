import { useEffect, useState } from 'react';
import { useProgram } from '../program/programContext.ts';
import { Dialog } from '../widgets/Dialog.tsx';
import type { DialogProps } from './dialogProps.ts';

type About = Awaited<ReturnType<ReturnType<typeof useProgram>['shell']['about']>>;

/** Version, runtime, and the licences of everything inside. */
export function AboutDialog({ onClose }: DialogProps) {
  const { shell } = useProgram();
  const [about, setAbout] = useState<About | null>(null);
  useEffect(() => void shell.about(null).then(setAbout), [shell]);
  return (
    <Dialog title="About Tailtrace" width="wide" onClose={onClose}>
      <p>
        A workstation for reviewing recorded oxygen-sensor waveforms, to say whether a catalytic converter has really
        failed. It sends nothing anywhere. MIT licence.
      </p>
      {about !== null && (
        <>
          <p>
            Version {about.version}, on {about.runtime}.
            {about.fallbackRuntime && ' This runtime is a stand-in for machines without a network, not for daily use.'}
          </p>
          <h3>Licences</h3>
          <table className="plainTable">
            <thead>
              <tr>
                <th scope="col">Part</th>
                <th scope="col">Version</th>
                <th scope="col">Licence</th>
              </tr>
            </thead>
            <tbody>
              {about.licences.map(({ name, version, licence }) => (
                <tr key={name}>
                  <td>{name}</td>
                  <td>{version}</td>
                  <td>{licence}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </>
      )}
    </Dialog>
  );
}
