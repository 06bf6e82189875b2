import type { InspectionRecord } from '../../record/record.ts';
import { VEHICLE_KINDS, type Vehicle } from '../../record/vehicle.ts';
import { Segments } from '../parts/Segments.tsx';
import { TextField } from '../parts/TextField.tsx';
import { work } from '../stores.ts';
import { INSPECTION, VEHICLE_KIND_NAMES } from '../words/inspection.ts';

export function VehicleForm({ record }: { readonly record: InspectionRecord }) {
  const { vehicle, inspector } = record;
  const set = (changed: Partial<Omit<Vehicle, 'axles'>>) =>
    work.act({ type: 'set-vehicle', vehicle: changed });
  const setInspector = (changed: Partial<InspectionRecord['inspector']>) =>
    work.act({ type: 'set-inspector', inspector: changed });
  return (
    <div className="form">
      <TextField label={INSPECTION.unit} value={vehicle.unit} onChange={(unit) => set({ unit })} />
      <Segments
        legend={INSPECTION.kind}
        values={VEHICLE_KINDS}
        names={VEHICLE_KIND_NAMES}
        value={vehicle.kind}
        onChange={(kind) => set({ kind })}
      />
      <div className="pair">
        <TextField
          label={INSPECTION.serialNumber}
          value={vehicle.serialNumber}
          onChange={(serialNumber) => set({ serialNumber })}
        />
        <TextField label={INSPECTION.owner} value={vehicle.owner} onChange={(owner) => set({ owner })} />
      </div>
      <h3>{INSPECTION.people}</h3>
      <div className="pair">
        <TextField
          label={INSPECTION.name}
          value={inspector.name}
          onChange={(name) => setInspector({ name })}
        />
        <TextField
          label={INSPECTION.qualification}
          value={inspector.qualification}
          onChange={(qualification) => setInspector({ qualification })}
        />
      </div>
      <p className="quiet">{INSPECTION.qualificationHint}</p>
    </div>
  );
}
