import { useEffect, useRef } from 'react';
import { useStore } from 'zustand';
import { notices } from '../stores.ts';
import { CLOSE } from '../words/en.ts';

export function Notices() {
  const list = useStore(notices, (state) => state.list);
  const place = useRef<HTMLDivElement>(null);
  const texts = list.map(({ text }) => text).join(' ');
  // Where a phone was scrolled away from it, a file that cannot be used would else seem to do nothing.
  useEffect(() => {
    if (texts !== '') place.current?.scrollIntoView({ block: 'nearest' });
  }, [texts]);
  return (
    <div ref={place} className="notices" role="alert">
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
