import { useMemo } from 'react';
import { smoothedCurves } from '../../analysis/curves.ts';
import type { BassCurves } from '../../analysis/types.ts';
import { alternativesOf, equaliserOf } from '../../model/alternatives.ts';
import type { Project } from '../../model/project.ts';
import { type Beside, besideCurves } from '../../proposals/beside.ts';
import { centreOf } from '../../proposals/chain.ts';
import { useDocument, useResults, useSession } from '../../state/view.tsx';

export interface BesideOption {
  readonly value: Beside;
  readonly word: string;
}

/** What can be laid over the curves of this document, in words. */
export const besideOptions = (project: Project): readonly BesideOption[] => {
  if (project.subwoofers.length === 0) return [];
  const filters: BesideOption[] =
    equaliserOf(project).length > 0 ? [{ value: 'filters', word: 'the filters in use' }] : [];
  const centre = centreOf(project);
  const through: BesideOption[] = centre
    ? [
        { value: 'centre', word: `${centre.id} and the crossover` },
        { value: 'filled', word: `${centre.id}, the dip filled` },
      ]
    : [];
  return [
    { value: 'nothing', word: 'nothing' },
    ...filters,
    { value: 'proposed', word: 'the filters proposed' },
    ...through,
    ...alternativesOf(project).map(({ id, name }): BesideOption => ({ value: `kept:${id}`, word: name })),
  ];
};

export interface BesideShown extends BesideOption {
  readonly options: readonly BesideOption[];
  /** Smoothed as the curves are; null where nothing lies over them, or not yet. */
  readonly curves: BassCurves | null;
  /** Whether it is that of the document as it stands. */
  readonly current: boolean;
}

/** What lies over the curves. What is no longer there (an alternative taken away) is nothing. */
export const useBeside = (): BesideShown => {
  const project = useDocument((state) => state.project);
  const wanted = useSession((state) => state.beside);
  const smoothing = useSession((state) => state.smoothing);
  const own = useResults((state) => state.curves?.value ?? null);
  const { chain, compared, keys } = useResults((state) => state.choice);
  const options = useMemo(() => besideOptions(project), [project]);
  const { value, word } = options.find((option) => option.value === wanted) ?? { value: 'nothing', word: 'nothing' };
  const curves = useMemo(() => {
    const found =
      own &&
      besideCurves(value, {
        curves: own,
        stored: equaliserOf(project),
        chain: chain?.value ?? null,
        compared: compared?.value ?? null,
      });
    return found && smoothedCurves(found, smoothing);
  }, [value, own, project, chain, compared, smoothing]);
  const answer = value.startsWith('kept:') ? 'compared' : 'chain';
  const answered = answer === 'chain' ? chain : compared;
  const current = value === 'nothing' || value === 'filters' || answered?.key === keys[answer];
  return { options, value, word, curves, current };
};
