type Props = {
  readonly caption?: string;
  /** Name and value; what has no value has no row. */
  readonly rows: readonly (readonly [name: string, text: string | null | undefined])[];
};

export function ValuesTable({ caption, rows }: Props) {
  return (
    <table className="values">
      {caption ? <caption className="quiet">{caption}</caption> : null}
      <tbody>
        {rows.map(([name, text]) =>
          text ? (
            <tr key={name}>
              <th scope="row">{name}</th>
              <td>{text}</td>
            </tr>
          ) : null,
        )}
      </tbody>
    </table>
  );
}
