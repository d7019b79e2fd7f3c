import { useRef } from 'react';
import type { Project } from '../model/project.ts';
import { sameBesides } from '../model/same-besides.ts';
import { useDocument, useSession } from './view.tsx';

/** The document, the same one as long as nothing but this part of it changes: for what that part has no say in. */
export const useProjectBesides = (part: keyof Project): Project => {
  const kept = useRef<Project | null>(null);
  return useDocument(({ project }) => {
    if (kept.current === null || !sameBesides(kept.current, project, part)) kept.current = project;
    return kept.current;
  });
};

/** The document, held as it was while a hand drags something in the scene: for names and lists, which no drag changes. */
export const useRestingProject = (): Project => {
  const kept = useRef<Project | null>(null);
  const dragging = useSession((state) => state.dragging !== null);
  return useDocument(({ project }) => {
    if (kept.current === null || !dragging) kept.current = project;
    return kept.current;
  });
};
