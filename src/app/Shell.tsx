import { Stage } from '../scene/Stage.tsx';

export const Shell = () => (
  <main style={{ position: 'fixed', inset: 0 }}>
    <Stage />
  </main>
);
