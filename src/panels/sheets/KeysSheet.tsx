import { Sheet } from './Sheet.tsx';

export interface KeyLine {
  readonly keys: readonly string[];
  readonly does: string;
}
export interface KeyGroup {
  readonly title: string;
  readonly lines: readonly KeyLine[];
}

/** Every key that does something, read from the same table that answers them. */
export const KeysSheet = ({ groups, onClose }: { groups: readonly KeyGroup[]; onClose(): void }) => (
  <Sheet title="Keys" onClose={onClose}>
    <div className="sheet-columns">
      {groups.map(({ title, lines }) => (
        <section key={title}>
          <h3>{title}</h3>
          <dl className="keys">
            {lines.map(({ keys, does }) => (
              <div key={does}>
                <dt>
                  {keys.map((key) => (
                    <kbd key={key}>{key}</kbd>
                  ))}
                </dt>
                <dd>{does}</dd>
              </div>
            ))}
          </dl>
        </section>
      ))}
    </div>
  </Sheet>
);
