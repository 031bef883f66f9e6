using PlatformForge.Exports.Files;
using PlatformForge.Platforms.AsBuilt;
using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Tables;

/// <summary>The tables of a platform as CSV files.</summary>
public static class PlatformTables
{
    /// <summary>What is needed, what each allowance takes of it, and what gap is left, at every station of the swept envelope.</summary>
    public static byte[] Gaps(PlatformDossier platform) => GapRows(platform).ToBytes();

    internal static CsvText GapRows(PlatformDossier platform)
    {
        var plan = platform.Plan;
        var need = plan.Requirement;
        var parts = need.Allowances ?? new(need.Swept, []);
        string[] headings =
        [
            "chainage_mm", "bare_reach_mm", .. parts.Costs.Select(c => $"{c.Name} mm"), "swept_reach_mm", "required_reach_mm", "coping_reach_mm", "spare_mm",
            "governing_vehicle", "governing_part", "governing_track",
            .. plan.Gaps.Traces.SelectMany(t => new[] { $"{t.Vehicle} nearest_gap_mm", $"{t.Vehicle} farthest_gap_mm" }),
        ];
        var csv = new CsvText(headings);
        var lines = plan.Gaps.Traces.SelectMany(t => new[] { Sill(plan, t.Stations, t.Nearest), Sill(plan, t.Stations, t.Farthest) }).ToArray();
        for (int i = 0; i < need.Stations.Length; i++)
        {
            double s = need.Stations[i], edge = plan.CopingFront.At(s);
            bool known = need.GoverningVehicle[i] >= 0;
            csv.Row([
                N(s, 3), N(parts.Bare[i], 3), .. parts.Costs.Select(c => N(c.Amount[i], 3)), N(need.Swept[i], 3), N(need.Required(i), 3), N(edge, 3),
                N(edge - need.Required(i), 3),
                known ? need.Vehicles[need.GoverningVehicle[i]] : "", known ? need.GoverningPart[i] : "", known ? plan.TrackOf(need.GoverningVehicle[i]) : "",
                .. lines.Select(sill => N(edge - sill.At(s), 3)),
            ]);
        }

        return csv;
    }

    // Between two stations of a trace a sill runs straight, the edge need not: the gap is taken from the edge of the row.
    private static PlanLine Sill(PlatformPlan plan, double[] stations, double[] gaps) =>
        new(stations, [.. stations.Select((s, i) => plan.CopingFront.At(s) - gaps[i])]);

    /// <summary>Gaps measured on the layout, where that puts the coping, and what is left for the vehicle with least room.</summary>
    public static byte[] AsBuilt(AsBuiltEdge edge)
    {
        var csv = new CsvText("line", "chainage_mm", "gap_mm", "measured_from", "planned_reach_mm", "true_reach_mm", "off_by_mm", "least_left_mm", "vehicle",
            "part");
        foreach (var m in edge.Measures)
        {
            csv.Row(N(m.Reading.Line, 0), N(m.Reading.Chainage, 1), N(m.Reading.Gap, 3), m.Reading.Vehicle ?? "running edge", N(m.Planned, 3), N(m.True, 3),
                N(m.OffBy, 3),
                m.Closest is { } near ? N(near.Left, 3) : "", m.Closest?.Vehicle ?? "", m.Closest?.Part ?? "");
        }

        return csv.ToBytes();
    }

    /// <summary>The sections with their sizes and what they take to print.</summary>
    public static byte[] Sections(PlatformDossier platform)
    {
        var csv = new CsvText("section", "from_chainage_mm", "to_chainage_mm", "size_x_mm", "size_y_mm", "size_z_mm", "volume_mm3", "mass_g", "filament_m",
            "hours", "plate", "pose");
        foreach (var s in platform.Sections.Sections)
        {
            int plate = platform.Sections.Plates.FirstOrDefault(p => p.Sections.Any(q => q.Section.Number == s.Number))?.Number ?? 0;
            csv.Row(N(s.Number, 0), N(s.From, 3), N(s.To, 3), N(s.Size.X, 2), N(s.Size.Y, 2), N(s.Size.Z, 2), N(s.Volumes.Finished, 1), N(s.Estimate.Grams, 1),
                N(s.Estimate.Metres, 2),
                N(s.Estimate.Hours, 2), N(plate, 0), s.PoseInWords);
        }

        return csv.ToBytes();
    }

    private static string N(double value, int digits) => double.IsFinite(value) ? PlatformForge.Exports.Drawings.Ink.Figures.Fixed(value, digits) : "";
}
