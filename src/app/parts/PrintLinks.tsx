import { PAPERS, type Paper } from '../../references/paper.ts';

type Props = {
  /** The pages' name in public/, without their paper. */
  readonly page: 'printed-target' | 'calibration-board';
  readonly words: { readonly papers: Readonly<Record<Paper, string>>; readonly newTab: string };
  readonly plain?: boolean;
};

/** Pages of their own: a printer's dialog belongs to the browser, and the page at hand keeps its place. */
export function PrintLinks({ page, words, plain = false }: Props) {
  return PAPERS.map((paper) => (
    <a
      key={paper}
      className={plain ? 'button plain' : 'button'}
      href={`${import.meta.env.BASE_URL}${page}-${paper}.svg`}
      target="_blank"
      rel="noopener"
    >
      {words.papers[paper]}
      <span className="unseen"> ({words.newTab})</span>
    </a>
  ));
}
