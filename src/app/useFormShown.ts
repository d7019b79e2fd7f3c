import { useLayoutEffect } from 'react';
import { useView } from '../state/view.tsx';

/** Says whether the form of what is chosen is in view. */
export const useFormShown = (formShown: boolean): void => {
  const { session } = useView();
  useLayoutEffect(() => session.setState({ formShown }), [session, formShown]);
};
