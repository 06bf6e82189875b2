import { useStore } from 'zustand';
import { notices } from '../stores.ts';
import { CLOSE } from '../words/en.ts';

export function Notices() {
  const list = useStore(notices, (state) => state.list);
  return (
    <div className="notices" role="alert">
      {list.map(({ topic, text, fileName }) => (
        <div className="notice" key={topic}>
          <p>
            {fileName === null ? null : <strong>{fileName}: </strong>}
            {text}
          </p>
          <button type="button" className="button" onClick={() => notices.clear(topic)}>
            {CLOSE}
          </button>
        </div>
      ))}
    </div>
  );
}
