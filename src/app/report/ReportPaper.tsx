import { useLayoutEffect, useRef } from 'react';
import { REPORT_STYLES } from '../../evidence/report-styles.ts';

type Props = { readonly body: string; readonly pageRules: string };

/**
 * The report in a tree of its own: its styles and the page's leave each other alone, and what it prints is the page itself, so that
 * the browser's own print command does the same as the button. Its markup holds no script, and the page's policy would run none.
 */
export function ReportPaper({ body, pageRules }: Props) {
  const host = useRef<HTMLDivElement>(null);

  useLayoutEffect(() => {
    if (!host.current) return;
    const root = host.current.shadowRoot ?? host.current.attachShadow({ mode: 'open' });
    root.adoptedStyleSheets = [sheetOf(REPORT_STYLES)];
    root.innerHTML = body;
  }, [body]);

  useLayoutEffect(() => {
    const sheet = sheetOf(pageRules);
    document.adoptedStyleSheets.push(sheet);
    return () => {
      document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
    };
  }, [pageRules]);

  return <div ref={host} className="report-paper" />;
}

function sheetOf(rules: string): CSSStyleSheet {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rules);
  return sheet;
}
