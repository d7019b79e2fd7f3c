import { useSession } from '../../state/view.tsx';

/** What the last change did to the findings. The live region reads the same words out, so this is for the eye alone. */
export const Told = () => {
  const told = useSession((state) => state.told);
  if (told === null) return null;
  return (
    <p className="told" aria-hidden="true">
      {told}
    </p>
  );
};
