/** How a proposal is looked at: laid over the hang, the hang as it is, the proposal alone, or both side by side. */
import { useStore } from '../selection.ts';
import { PROPOSAL_VIEWS, proposalView } from './in-proposal.ts';

export function ViewSwitch() {
  const how = useStore(proposalView);
  return (
    <fieldset className="view-switch">
      <legend>View</legend>
      {PROPOSAL_VIEWS.map((name) => (
        <button
          key={name}
          type="button"
          className={`cmd${name === how ? ' on' : ''}`}
          aria-pressed={name === how}
          onClick={() => proposalView.set(name)}
        >
          {name}
        </button>
      ))}
    </fieldset>
  );
}
