/** What a remark is about, by name: 'The valley from Tallow Hill', 'a spot on Dye House, east wall'. */
import type { Judgements } from '@enfilade/shared/judgements';
import { surfaceName } from '@enfilade/shared/surface-names';
import type { RemarkAbout } from '@enfilade/shared/talk';

export function aboutName(judgements: Judgements, about: RemarkAbout): string {
  const { documents } = judgements;
  switch (about.kind) {
    case 'piece':
      return judgements.nameOf(about.pieceId);
    case 'vignette':
      return documents.get('vignettes', about.vignetteId)?.name ?? 'a vignette that is gone';
    case 'wall':
      return surfaceName(documents, about.surface);
    case 'spot':
      return `a spot on ${surfaceName(documents, about.surface)}`;
    case 'paint':
      return documents.get('deck', about.paintId)?.name ?? 'a paint that is gone';
    case 'proposal':
      return documents.get('proposals', about.proposalId)?.title ?? 'a proposal that is gone';
  }
}
