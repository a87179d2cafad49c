/** Which lamp the gallery has, a fact of the show, and which light one's own studio has, kept in this browser. */
import { lightFromText } from '@enfilade/colour/light-file';
import type { FileIssue } from '@enfilade/colour/paint-file';
import * as commands from '@enfilade/shared/commands';
import { LAMP_IDS, type Lamp, lampFrom, lampNameOf, measuredLampOf } from '@enfilade/shared/lamps';
import { useId, useState } from 'react';
import { act } from '../cards/acting.ts';
import { textOfFile } from '../deck/paint-file-reading.ts';
import { prefer } from '../preferences.ts';
import { say } from '../shell/live-region.tsx';
import { useHang } from '../sync/hooks.ts';
import { useGalleryLamp, useStudioLamp } from './desk-light.tsx';

/** More than any meter writes of one lamp. */
const MAX_BYTES = 2 << 20;

export function LampChoices() {
  const hang = useHang();
  const gallery = useGalleryLamp();
  const studio = useStudioLamp();
  const setGallery = (lamp: Lamp): void => {
    act(hang, commands.setSetting('galleryLamp', lamp), `The gallery’s lamp is ${lampNameOf(lamp)}, for everybody`);
  };
  return (
    <div className="lamp-choices">
      <LampChoice
        label="The gallery’s lamp"
        lamp={gallery}
        take={setGallery}
        frozen={!hang.may('hang')}
        note={hang.may('hang') ? 'for everybody in the show' : 'set by whoever may change the hang'}
      />
      <LampChoice
        label="My studio’s light"
        lamp={studio}
        take={(studioLamp) => {
          prefer({ studioLamp });
          say(`My studio’s light is ${lampNameOf(studioLamp)}.`);
        }}
        note="for my screen alone"
      />
    </div>
  );
}

interface ChoiceProps {
  readonly label: string;
  readonly lamp: Lamp;
  readonly take: (lamp: Lamp) => void;
  readonly note: string;
  readonly frozen?: boolean;
}

function LampChoice({ label, lamp, take, note, frozen = false }: ChoiceProps) {
  const id = useId();
  const [issues, setIssues] = useState<readonly FileIssue[]>([]);
  const read = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    if (file.size > MAX_BYTES) {
      setIssues([
        { where: file.name, what: 'It is larger than what a meter writes of one lamp, so it is not read.', value: '' },
      ]);
      return;
    }
    const name = file.name.replace(/\.[^.]*$/, '');
    const { light, issues: found } = lightFromText(await textOfFile(file), { file: file.name, name });
    setIssues(found);
    if (light !== null) take(measuredLampOf(light));
  };
  return (
    <div>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={typeof lamp === 'string' ? lamp : ''}
        disabled={frozen}
        onChange={(event) => {
          const chosen = lampFrom(event.target.value);
          setIssues([]);
          if (chosen !== null) take(chosen);
        }}
      >
        {typeof lamp === 'string' ? null : <option value="">{lampNameOf(lamp)}</option>}
        {LAMP_IDS.map((one) => (
          <option key={one} value={one}>
            {lampNameOf(one)}
          </option>
        ))}
      </select>
      <p className="t1">
        {note}
        {frozen ? null : (
          <>
            ;{' '}
            <span className="lamp-file">
              <input
                id={`${id}-file`}
                type="file"
                accept=".csv,.txt,.tsv,.cgats,text/plain,text/csv"
                onChange={(event) => {
                  void read(event.target.files?.[0]);
                  // The same file may be chosen again after it was mended.
                  event.target.value = '';
                }}
              />
              <label htmlFor={`${id}-file`} className="cmd">
                read a meter’s file<span className="spoken"> for {label.toLowerCase()}</span>
              </label>
            </span>
          </>
        )}
      </p>
      {issues.length === 0 ? null : (
        <ul role="alert" className="t1">
          {issues.slice(0, 3).map(({ where, what, value }) => (
            <li key={where + what}>
              <b className="b">{where}</b>: {what}
              {value === '' ? '' : ` It says “${value}”.`}
            </li>
          ))}
          {issues.length > 3 ? <li>and {issues.length - 3} more</li> : null}
        </ul>
      )}
    </div>
  );
}
