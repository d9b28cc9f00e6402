import { useStore } from 'zustand';
import { changeSettings } from '../actions/changeSettings.ts';
import { useProgram } from '../program/programContext.ts';
import { Button } from '../widgets/Button.tsx';
import { CheckField } from '../widgets/CheckField.tsx';
import { Dialog } from '../widgets/Dialog.tsx';
import { SelectField } from '../widgets/SelectField.tsx';
import { TextField } from '../widgets/TextField.tsx';
import type { DialogProps } from './dialogProps.ts';

/** Settings of the program, for all vehicles. Each counts at once. */
export function SettingsDialog({ onClose }: DialogProps) {
  const program = useProgram();
  const settings = useStore(program.settings, (state) => state.settings);
  const change = (part: Partial<typeof settings>): void => void changeSettings(program, part);
  return (
    <Dialog
      title="Settings"
      lead="They count at once, for every vehicle."
      onClose={onClose}
      foot={
        <Button look="main" onPress={onClose}>
          Done
        </Button>
      }
    >
      <div className="fields">
        <TextField
          label="Your name"
          className="whole"
          value={settings.reader}
          maxLength={200}
          hint="It stands under your notes and opinions, and on evidence sheets."
          autoFocus
          onValue={(reader) => change({ reader })}
        />
        <TextField
          label="Your licence"
          className="whole"
          value={settings.licence}
          maxLength={200}
          hint="It stands under your opinions; leave it empty where there is none."
          onValue={(licence) => change({ licence })}
        />
        <SelectField
          label="Theme"
          value={settings.theme}
          choices={[
            { value: 'system', words: 'As the system' },
            { value: 'light', words: 'Light: paper' },
            { value: 'dark', words: 'Dark: the bay at night' },
          ]}
          onValue={(theme) => change({ theme })}
        />
        <SelectField
          label="Temperatures in"
          value={settings.temperatureUnit}
          choices={[
            { value: 'C', words: '°C' },
            { value: 'F', words: '°F' },
            { value: 'K', words: 'K' },
          ]}
          onValue={(temperatureUnit) => change({ temperatureUnit })}
        />
        <SelectField
          label="Vehicle speed in"
          value={settings.speedUnit}
          choices={[
            { value: 'km/h', words: 'km/h' },
            { value: 'mph', words: 'mph' },
          ]}
          onValue={(speedUnit) => change({ speedUnit })}
        />
        <SelectField
          label="Paper"
          value={settings.paper}
          choices={[
            { value: 'A4', words: 'A4' },
            { value: 'Letter', words: 'Letter' },
          ]}
          onValue={(paper) => change({ paper })}
        />
        <SelectField
          label="The wheel over the traces"
          value={settings.wheel}
          choices={[
            { value: 'zoom', words: 'Zooms at the pointer' },
            { value: 'pan', words: 'Moves along' },
          ]}
          onValue={(wheel) => change({ wheel })}
        />
      </div>
      <CheckField
        label="Single-letter keys while the traces have the focus"
        checked={settings.singleKeys}
        onChecked={(singleKeys) => change({ singleKeys })}
      />
      <CheckField
        label="Guide lines where the trade reads them"
        checked={settings.showGuides}
        onChecked={(showGuides) => change({ showGuides })}
      />
    </Dialog>
  );
}
