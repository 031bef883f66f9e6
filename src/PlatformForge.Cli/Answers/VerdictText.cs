using System.Text.Json;
using PlatformForge.Cli.Commands;
using PlatformForge.Cli.Terminals;
using PlatformForge.Exports.Files;
using PlatformForge.Projects.Runs;
using PlatformForge.Verification.Written;
using static System.FormattableString;

namespace PlatformForge.Cli.Answers;

/// <summary>Verdicts and figures in words and as JSON members.</summary>
internal static class VerdictText
{
    // Half the last digit shown, mm: what rounds to nothing short is not told as short.
    private const double Seen = 0.005;

    public static void Vehicles(TextWriter o, Verdict verdict)
    {
        foreach (var vehicle in verdict.Vehicles)
        {
            // The names may come from a folder that somebody else made.
            o.WriteLine(PlainLine.Of($"  {vehicle.Vehicle} on {vehicle.Track}: " + (vehicle.Closest is { } near
                ? OfVehicle(near, vehicle.Tightest ?? near, verdict.Platforms > 1)
                : vehicle.Tightest is { } leaning ? Invariant($"{Left(leaning)}, {Place(leaning, verdict.Platforms > 1)}, as it leans; ")
                + "standing true it comes to the height of nothing printed"
                : "comes to the height of nothing printed" + (verdict.Platforms > 1 && vehicle.Platform.Length > 0 ? " of " + vehicle.Platform : ""))));
        }
    }

    /// <summary>The least that is left wherever surveys let the track lie, for each face that stands beside a surveyed one: one figure at one
    /// place, since what is left and what the survey leaves uncertain are least and greatest at different chainages.</summary>
    public static void Surveyed(TextWriter o, IReadOnlyList<PlatformDossier> platforms)
    {
        foreach (var face in platforms.SelectMany(p => p.Faces))
        {
            if (face.Tightest.Where(t => t.OnAnyLine is not null).MinBy(t => t.OnAnyLine!.Left) is { OnAnyLine: { } least } tight)
            {
                double left = least.Left - face.Budget.Margin;
                string what = left < -Seen ? Invariant($"play and budget are kept but for {-left:0.00} mm at most")
                    : Invariant($"play and budget are kept in full, with {Math.Max(0, left):0.00} mm or more to spare");
                o.WriteLine(PlainLine.Of(Invariant($"  told of the line found; wherever the survey lets the true track lie beside {face.FaceName}, {what} ")
                    + Invariant($"(least for {tight.Called}, at chainage {least.Chainage:0} mm)")));
            }
        }
    }

    // What is left is the figure of the report's table too; the clearance of the vehicle standing true comes beside it.
    private static string OfVehicle(Nearness near, Nearness tight, bool many)
    {
        if (near.Clearance < 0)
        {
            return Invariant($"{(near.InPlan ? "overlaps" : "fouls")} by {-near.Clearance:0.00} mm, {Place(near, many)}");
        }

        return Invariant($"{Left(tight)}, {Place(tight, many)}; standing true it clears by {near.Clearance:0.00} mm");
    }

    private static string Left(Nearness tight) => tight.Clearance < -Seen
        ? Invariant($"{-tight.Clearance:0.00} mm short of play and budget") : Invariant($"{Math.Max(0, tight.Clearance):0.00} mm left after play and budget");

    private static string Place(Nearness near, bool many) => Invariant($"{VerdictLine.Along(near)}{VerdictLine.Beside(near, many)} ")
        + Invariant($"({near.Part}{(near.InPlan ? ", in plan" : "")})");

    public static void Json(Utf8JsonWriter json, Verdict verdict)
    {
        json.WriteStartObject("verdict");
        json.WriteBoolean("passed", verdict.Passed);
        json.WriteBoolean("clear", verdict.IsClear);
        json.WriteStartArray("not_held");
        foreach (string open in verdict.NotHeld)
        {
            json.WriteStringValue(open);
        }

        json.WriteEndArray();
        Nearness(json, "closest", verdict.Closest);
        Nearness(json, "tightest", verdict.Tightest);
        json.WriteStartArray("vehicles");
        foreach (var vehicle in verdict.Vehicles)
        {
            json.WriteStartObject();
            json.WriteString("vehicle", vehicle.Vehicle);
            json.WriteString("track", vehicle.Track);
            Nearness(json, "closest", vehicle.Closest);
            Nearness(json, "tightest", vehicle.Tightest);
            json.WriteEndObject();
        }

        json.WriteEndArray();
        json.WriteEndObject();
    }

    public static void Figures(Utf8JsonWriter json, DesignFigures figures)
    {
        JsonObject.Number(json, "mean_gap_mm", figures.MeanGap);
        JsonObject.Number(json, "largest_gap_mm", figures.LargestGap);
        JsonObject.Number(json, "largest_gap_full_size_mm", figures.LargestGapFullSize);
        json.WriteNumber("sections", figures.Sections);
        json.WriteNumber("plates", figures.Plates);
        JsonObject.Number(json, "grams", figures.Grams);
        JsonObject.Number(json, "hours", figures.Hours);
        JsonObject.Number(json, "least_clearance_mm", figures.Closest?.Clearance);
    }

    private static void Nearness(Utf8JsonWriter json, string name, Nearness? near)
    {
        if (near is null)
        {
            json.WriteNull(name);
            return;
        }

        json.WriteStartObject(name);
        JsonObject.Number(json, "clearance_mm", near.Clearance);
        json.WriteString("vehicle", near.Vehicle);
        json.WriteString("part", near.Part);
        json.WriteString("track", near.Track);
        json.WriteString("section", near.Section);
        JsonObject.Number(json, "chainage_mm", near.Chainage);
        JsonObject.Number(json, "stretch_from_mm", near.Stretch.From);
        JsonObject.Number(json, "stretch_to_mm", near.Stretch.To);
        JsonObject.Number(json, "offset_mm", near.Offset);
        json.WriteString("platform", near.Platform);
        JsonObject.Number(json, "height_mm", near.Height);
        json.WriteBoolean("in_plan_only", near.InPlan);
        json.WriteBoolean("backwards", near.Backwards);
        json.WriteEndObject();
    }
}
