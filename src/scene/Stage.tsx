import { Canvas } from '@react-three/fiber';
import { useView, ViewProvider } from '../state/view.tsx';
import { Room } from './objects/Room.tsx';

/** The one canvas. Everything three-dimensional hangs below it. */
export const Stage = () => {
  const view = useView();
  return (
    <Canvas frameloop="demand" camera={{ position: [3.4, 4.2, 8.8], fov: 42, near: 0.05, far: 60 }}>
      <ViewProvider value={view}>
        <Room />
      </ViewProvider>
    </Canvas>
  );
};
