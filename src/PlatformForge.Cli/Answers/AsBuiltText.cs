using System.Text.Json;
using PlatformForge.Cli.Commands;
using PlatformForge.Exports.Reports.Chapters;
using PlatformForge.Platforms.AsBuilt;
using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>Gaps measured on the layout against the plan, in words and as JSON members.</summary>
internal static class AsBuiltText
{
    public static void Plain(TextWriter o, AsBuiltEdge edge, double gauge)
    {
        o.WriteLine($"{edge.Platform}: measured on the layout, against the plan (mm)");
        string[] headings = ["chainage", "gap", "measured from", "planned edge", "true edge", "off by", "least left", "for"];
        string[][] rows = [.. edge.Measures.Select(Row)];
        int[] widths = [.. headings.Select((h, i) => rows.Select(r => r[i].Length).Append(h.Length).Max())];
        foreach (string[] row in rows.Prepend(headings))
        {
            o.WriteLine(("  " + string.Join("  ", row.Select((c, i) => i is 2 or 7 ? c.PadRight(widths[i]) : c.PadLeft(widths[i])))).TrimEnd());
        }

        if (AsBuiltWords.FromRail(edge, gauge) is { } how)
        {
            o.WriteLine("  " + how);
        }

        if (edge.Worst is { Closest: { } near } worst)
        {
            o.WriteLine(Invariant($"  Worst: chainage {worst.Reading.Chainage:0.#} mm, {near.Left:0.00} mm left for {near.Vehicle} ({near.Part}) ")
                + Invariant($"where {near.Planned:0.00} mm were planned."));
        }
    }

    public static void Json(Utf8JsonWriter json, IReadOnlyList<AsBuiltEdge> edges, double gauge)
    {
        json.WriteStartArray("as_built");
        foreach (var edge in edges)
        {
            json.WriteStartObject();
            json.WriteString("platform", edge.Platform);
            if (AsBuiltWords.FromRail(edge, gauge) is { } how)
            {
                json.WriteString("note", how);
            }

            JsonObject.Number(json, "worst_at_mm", edge.Worst?.Reading.Chainage);
            JsonObject.Number(json, "worst_left_mm", edge.Worst?.Closest?.Left);
            json.WriteStartArray("readings");
            foreach (var measure in edge.Measures)
            {
                One(json, measure);
            }

            json.WriteEndArray();
            json.WriteEndObject();
        }

        json.WriteEndArray();
    }

    private static string[] Row(EdgeMeasure m) =>
    [
        Invariant($"{m.Reading.Chainage:0.0}"), Invariant($"{m.Reading.Gap:0.00}"), m.Reading.Vehicle ?? "running edge", Invariant($"{m.Planned:0.00}"),
        Invariant($"{m.True:0.00}"),
        SignedText.Of(m.OffBy), m.Closest is { } near ? Invariant($"{near.Left:0.00}") : "", m.Closest is { } c ? $"{c.Vehicle} ({c.Part})" : "",
    ];

    private static void One(Utf8JsonWriter json, EdgeMeasure measure)
    {
        json.WriteStartObject();
        JsonObject.Number(json, "chainage_mm", measure.Reading.Chainage);
        JsonObject.Number(json, "gap_mm", measure.Reading.Gap);
        json.WriteString("measured_from", measure.Reading.Vehicle ?? "running edge");
        JsonObject.Number(json, "planned_reach_mm", measure.Planned);
        JsonObject.Number(json, "true_reach_mm", measure.True);
        JsonObject.Number(json, "off_by_mm", measure.OffBy);
        json.WriteStartArray("vehicles");
        foreach (var room in measure.Vehicles)
        {
            json.WriteStartObject();
            json.WriteString("vehicle", room.Vehicle);
            json.WriteString("part", room.Part);
            JsonObject.Number(json, "swept_reach_mm", room.Swept);
            JsonObject.Number(json, "planned_clearance_mm", room.Planned);
            JsonObject.Number(json, "clearance_left_mm", room.Left);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }
}
