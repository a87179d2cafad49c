/** Along the foot while pictures are read: how far it is, and the press that stops it. */
import { InkedRule } from './inked-rule.tsx';
import { type SendingState, timeLeftText } from './sending.ts';

interface ReadingFootProps {
  readonly sending: SendingState;
  readonly stop: () => void;
}

export function ReadingFoot({ sending, stop }: ReadingFootProps) {
  return (
    <footer className="bi-foot">
      <div>
        <h2>Reading the pictures</h2>
        <p className="t1">
          {sending.done} of {sending.of}; {timeLeftText(sending.secondsLeft)}
        </p>
      </div>
      <div>
        <InkedRule label="Pictures read" done={sending.done} of={sending.of} />
        <p className="t1">{sending.now}</p>
      </div>
      <p className="bi-commands">
        <button type="button" onClick={stop}>
          stop reading
        </button>
      </p>
    </footer>
  );
}
