import { Canvas } from '@react-three/fiber';
import { useState } from 'react';
import { NeutralToneMapping } from 'three';
import { useView, ViewProvider } from '../state/view.tsx';
import { ContextGuard } from './ContextGuard.tsx';
import { HandDriver } from './interaction/HandDriver.tsx';
import { Handles } from './interaction/Handles.tsx';
import { Marks } from './interaction/Marks.tsx';
import { KitProvider, StageKit } from './kit.ts';
import { Room } from './objects/Room.tsx';
import { Angles } from './overlays/Angles.tsx';
import { BassFloor } from './overlays/BassFloor.tsx';
import { LabelDriver, LabelLayer } from './overlays/LabelLayer.tsx';
import { Sightlines } from './overlays/Sightlines.tsx';
import { Redraw } from './Redraw.tsx';
import { RigDriver } from './rigs/RigDriver.tsx';
import { NoScene, StageBoundary } from './StageBoundary.tsx';

const HOUSE_DARK = '#14110f';

/** The one canvas, for the life of the page. Everything three-dimensional hangs below it, all labels lie over it. */
export const Stage = () => {
  const view = useView();
  const [kit] = useState(() => new StageKit());
  const [alive, setAlive] = useState(true);
  if (kit.renderer === 'none') return <NoScene why="no-webgl" />;
  return (
    <StageBoundary>
      <KitProvider value={kit}>
        <div className="stage" style={{ position: 'absolute', inset: 0, overflow: 'hidden', background: HOUSE_DARK }}>
          <Canvas
            frameloop="demand"
            dpr={[1, 2]}
            camera={{ manual: true, near: 0.1, far: 80 }}
            gl={{ antialias: kit.renderer === 'hardware', stencil: true, toneMapping: NeutralToneMapping }}
          >
            <ViewProvider value={view}>
              <KitProvider value={kit}>
                <color attach="background" args={[HOUSE_DARK]} />
                <Redraw />
                <ContextGuard onChange={setAlive} />
                <RigDriver />
                <LabelDriver />
                <HandDriver />
                {alive && (
                  <>
                    <Room />
                    <BassFloor />
                    <Angles />
                    <Sightlines />
                    <Marks />
                    <Handles />
                  </>
                )}
              </KitProvider>
            </ViewProvider>
          </Canvas>
          <LabelLayer />
          <div
            aria-hidden="true"
            ref={(veil) => {
              kit.veil = veil;
            }}
            style={{ position: 'absolute', inset: 0, background: HOUSE_DARK, opacity: 0, pointerEvents: 'none' }}
          />
        </div>
      </KitProvider>
    </StageBoundary>
  );
};
