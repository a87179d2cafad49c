/** What is agreed with the lender of a record, typed by who keeps the checklist; everybody reads it but value and contact. */
import * as commands from '@enfilade/shared/commands';
import { agreeToPlaces, correctLoan, loanOf, moneyFrom } from '@enfilade/shared/loans';
import { GLAZINGS, LOAN_STATUSES, type Loan, type ObjectId } from '@enfilade/shared/schema';
import { type ReactNode, useId } from 'react';
import { useEntity, useRoots, useShow } from '../sync/hooks.ts';
import { act } from './acting.ts';
import { LengthField } from './length-field.tsx';
import { TypedField } from './typed-field.tsx';
import './loan-fields.css';

type LoanTerms = Partial<Omit<Loan, 'removed'>>;

export function LoanFields({ objectId }: { readonly objectId: ObjectId }) {
  const show = useShow();
  const { documents } = show;
  useRoots('loans', 'objects', 'places');
  const object = documents.get('objects', objectId);
  const frozen = !show.may('checklist');
  if (object === undefined) return null;
  const loan = loanOf(documents, objectId);
  const set = (fields: LoanTerms, what: string): string | null =>
    act(show, correctLoan(objectId, fields), `${what} set`) ? null : 'cannot be set just now';
  const correct = (fields: Parameters<typeof commands.correctObject>[1], what: string): string | null =>
    act(show, commands.correctObject(objectId, fields), `${what} set`) ? null : 'cannot be set just now';
  const words = (label: string, field: 'reference' | 'humidity' | 'temperature' | 'terms'): ReactNode =>
    frozen && !loan[field] ? null : (
      <TypedField
        label={label}
        text={loan[field] || null}
        words
        frozen={frozen}
        take={(typed) => set({ [field]: typed }, label.toLowerCase())}
      />
    );
  return (
    <div className="loan-fields">
      <div className="loan-fields-part typed-wide">
        <Choice
          label="Status"
          value={loan.status}
          frozen={frozen}
          options={LOAN_STATUSES}
          take={(status) => set({ status }, 'status')}
        />
        {words('Reference', 'reference')}
        <TypedField
          label="Credit line, exact"
          text={object.creditLine || null}
          words
          frozen={frozen}
          take={(typed) => correct({ creditLine: typed }, 'credit line')}
        />
        <PrivateLoan objectId={objectId} />
      </div>
      <div className="loan-fields-part">
        <Day label="Leaves the lender" day={loan.from} frozen={frozen} take={(from) => set({ from }, 'day')} />
        <Day
          label="In the museum from"
          day={loan.arrives}
          frozen={frozen}
          take={(arrives) => set({ arrives }, 'day')}
        />
        <Day label="In the museum until" day={loan.leaves} frozen={frozen} take={(leaves) => set({ leaves }, 'day')} />
        <Day label="Back at the lender" day={loan.to} frozen={frozen} take={(to) => set({ to }, 'day')} />
      </div>
      <div className="loan-fields-part">
        <TypedField
          label="Lux at most"
          absent="none"
          text={loan.mostLux == null ? null : String(loan.mostLux)}
          frozen={frozen}
          take={(typed) => {
            if (typed === '') return set({ mostLux: null }, 'light');
            const lux = Number(typed.replace(/\s*(lux|lx)$/i, ''));
            return lux > 0 && lux <= 100_000 ? set({ mostLux: lux }, 'light') : 'a number of lux above 0';
          }}
        />
        <LengthField
          label="Foot at least above the floor"
          mm={loan.lowestFootMm ?? null}
          frozen={frozen}
          leastMm={0}
          absent="none"
          clear={() => set({ lowestFootMm: null }, 'height')}
          take={(mm) => set({ lowestFootMm: mm }, 'height')}
        />
        <LengthField
          label="Top at most above the floor"
          mm={loan.highestTopMm ?? null}
          frozen={frozen}
          leastMm={0}
          absent="none"
          clear={() => set({ highestTopMm: null }, 'height')}
          take={(mm) => set({ highestTopMm: mm }, 'height')}
        />
        <Choice
          label="Glazed with"
          value={object.glazing ?? 'not known'}
          frozen={frozen}
          options={['not known', ...GLAZINGS]}
          take={(glazing) => correct({ glazing: glazing === 'not known' ? null : glazing }, 'glazing')}
        />
        <Asks
          label="asks for glazing"
          on={loan.asksGlazing}
          frozen={frozen}
          take={(asksGlazing) => set({ asksGlazing }, 'glazing')}
        />
        <Asks
          label="asks for a case"
          on={loan.asksCase}
          frozen={frozen}
          take={(asksCase) => set({ asksCase }, 'case')}
        />
        <Asks
          label="is asked before each move"
          on={loan.asksConsent}
          frozen={frozen}
          take={(asksConsent) => set({ asksConsent }, 'consent')}
        />
        {loan.asksConsent === true && !frozen ? <Agreed objectId={objectId} /> : null}
      </div>
      <div className="loan-fields-part typed-wide">
        {words('Relative humidity', 'humidity')}
        {words('Temperature', 'temperature')}
        {words('Further terms', 'terms')}
      </div>
    </div>
  );
}

function Agreed({ objectId }: { readonly objectId: ObjectId }) {
  const show = useShow();
  const placed = show.judgements.piecesOf(objectId).some((id) => show.judgements.where.placeOf(id) !== null);
  if (!placed) return <p className="t1 q">It has no place they could agree to yet.</p>;
  return (
    <p>
      <button
        type="button"
        onClick={() =>
          act(show, agreeToPlaces(show.judgements, objectId), 'written down: the lender agrees to its place')
        }
      >
        the lender agrees to where it is now
      </button>
    </p>
  );
}

/** Shown only where the private document is held at all. */
function PrivateLoan({ objectId }: { readonly objectId: ObjectId }) {
  const show = useShow();
  const facts = useEntity('values', objectId);
  if (show.documents.doc('private') === undefined) return null;
  const frozen = !show.may('private');
  const set = (fields: Parameters<typeof commands.correctPrivate>[1], what: string): string | null =>
    act(show, commands.correctPrivate(objectId, fields), `${what} set`) ? null : 'cannot be set just now';
  return (
    <>
      <TypedField
        label="Insured for; not for every seat"
        text={facts?.value || null}
        words
        frozen={frozen}
        take={(value) =>
          value === '' || moneyFrom(value) !== null
            ? set({ value }, 'value')
            : 'a sum with its currency’s three letters, like EUR 5,200'
        }
      />
      <TypedField
        label="Contact; not for every seat"
        text={facts?.contact || null}
        words
        frozen={frozen}
        take={(contact) => set({ contact }, 'contact')}
      />
    </>
  );
}

interface ChoiceProps<T extends string> {
  readonly label: string;
  readonly value: T;
  readonly options: readonly T[];
  readonly frozen: boolean;
  readonly take: (value: T) => string | null;
}

function Choice<T extends string>({ label, value, options, frozen, take }: ChoiceProps<T>) {
  const id = useId();
  return (
    <div className="typed-field">
      <label className="typed-label" htmlFor={id}>
        {label}
      </label>
      {frozen ? (
        <output id={id} className="typed-value typed-frozen">
          {value}
        </output>
      ) : (
        <select id={id} className="record-kind" value={value} onChange={(event) => take(event.target.value as T)}>
          {options.map((option) => (
            <option key={option} value={option}>
              {option}
            </option>
          ))}
        </select>
      )}
    </div>
  );
}

interface DayProps {
  readonly label: string;
  readonly day: string | undefined;
  readonly frozen: boolean;
  readonly take: (day: string) => string | null;
}

function Day({ label, day, frozen, take }: DayProps) {
  if (frozen) {
    return (
      <p className="loan-day">
        {label} <span className={day ? 'b' : 'unk'}>{day || 'not set'}</span>
      </p>
    );
  }
  return (
    <label className="loan-day">
      {label}
      <input type="date" value={day ?? ''} onChange={(event) => take(event.target.value)} />
    </label>
  );
}

interface AsksProps {
  readonly label: string;
  readonly on: boolean | undefined;
  readonly frozen: boolean;
  readonly take: (on: boolean) => string | null;
}

function Asks({ label, on, frozen, take }: AsksProps) {
  if (frozen && on !== true) return null;
  return (
    <label className="loan-asks">
      <input type="checkbox" checked={on === true} disabled={frozen} onChange={(event) => take(event.target.checked)} />
      the lender {label}
    </label>
  );
}
