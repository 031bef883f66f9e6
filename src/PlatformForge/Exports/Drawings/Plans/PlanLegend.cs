using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Files;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
namespace PlatformForge.Exports.Drawings.Plans;

/// <summary>The key over a plan: what is in the drawing, and nothing else.</summary>
internal sealed class PlanLegend(Dossier dossier, PlatformDossier platform, bool otherTracks)
{
    private const double Sign = 9, Apart = 5, Row = 4.8, Heading = 24;

    public void DrawOn(Sheet sheet, Labels labels)
    {
        double left = TitleBlock.Inset, x = left + Heading, y = TitleBlock.Margin + 8, right = sheet.Width - TitleBlock.Inset;
        sheet.Text("Plan", new(left, y + 1.2), HouseStyle.Heading);
        foreach (var (name, draw) in Keys())
        {
            double length = Sign + TextStyle.Length(name, HouseStyle.Label);
            if (x + length > right)
            {
                (x, y) = (left + Heading, y + Row);
            }

            draw(sheet, x, y);
            sheet.Text(name, new(x + Sign, y + 0.9), HouseStyle.Label);
            x += length + Apart;
        }

        labels.Keep(TitleBlock.Margin, TitleBlock.Margin, right, y + 4);
    }

    private IEnumerable<(string Name, Action<Sheet, double, double> Draw)> Keys() =>
        KeysOfPlatform().Concat(KeysOfSections()).Concat(KeysOfLines(platform.Plan)).Concat(new PlanMarks(platform.Plan, []).Keys()).Concat(KeysOfTracks());

    // The vehicles' room, the platform's edge and what it stands on.
    private IEnumerable<(string Name, Action<Sheet, double, double> Draw)> KeysOfPlatform()
    {
        var plan = platform.Plan;
        yield return ("swept by all vehicles", (s, x, y) => s.Box(x, y - 1.5, 7, 3, new(HouseStyle.Swept, 0.1), new(0.2, HouseStyle.Swept, 2, 0.8)));
        yield return ("track centre", (s, x, y) => s.Line(new(x, y), new(x + 7, y), HouseStyle.Centre));
        string coping = plan.Spec.Coping.Kind switch { CopingKind.Bricks => "coping bricks", CopingKind.Timber => "timber edge", _ => "coping slabs" };
        yield return (coping, (s, x, y) => s.Box(x, y - 1.5, 7, 3, new(HouseStyle.Coping), HouseStyle.Thin));
        string below = plan.Trestle is not null ? "caps and bearers below"
            : platform.Sections.Plan.Fittings.FirstOrDefault(r => r.IsBefore && r.Places.Count > 0) is { } before ? $"walls, {before.Plural} and ribs below"
            : "walls and ribs below";
        yield return (below, (s, x, y) => s.Line(new(x, y), new(x + 7, y), HouseStyle.Hidden));
        if (plan.Bank is not null)
        {
            yield return ("bank", BankHachures.Key);
        }

        if (plan.Trestle is not null)
        {
            yield return ("post of a bent", (s, x, y) => s.Box(x + 2, y - 1.5, 3, 3, new(HouseStyle.Quiet, 0.5), HouseStyle.Hidden with { Width = 0.1 }));
        }
    }

    private IEnumerable<(string Name, Action<Sheet, double, double> Draw)> KeysOfSections()
    {
        if (platform.Sections.Cuts.Count > 0)
        {
            yield return ("cut between sections", (s, x, y) => s.Line(new(x, y), new(x + 7, y), HouseStyle.Cut));
        }

        if (platform.Sections.Sections.Any(p => p.Pockets.Count > 0))
        {
            yield return ("pocket for a plate, below", (s, x, y) => s.Box(x + 1, y - 1, 5, 2, null, PlanParts.Pocket));
        }
    }

    private static IEnumerable<(string Name, Action<Sheet, double, double> Draw)> KeysOfLines(PlatformPlan plan)
    {
        if (plan.WhiteLine is not null)
        {
            yield return ("white line", (s, x, y) => s.Box(x, y - 0.6, 7, 1.2, new(HouseStyle.White), new(0.08, HouseStyle.Quiet)));
        }

        if (plan.Body.Lines.FirstOrDefault(l => l.Made.Name == LineMake.Tactile) is { } tactile)
        {
            yield return ("tactile strip", (s, x, y) => s.Box(x, y - 1.2, 7, 2.4, new(LineLooks.Of(tactile.Made, plan.Spec)), new(0.08, HouseStyle.Quiet)));
        }

        if (plan.Body.Lines.FirstOrDefault(l => l.Made.Name is LineMake.Retaining or LineMake.Kerb) is { } strip)
        {
            yield return (strip.Made.Name, (s, x, y) => s.Box(x, y - 0.9, 7, 1.8, new(LineLooks.Of(strip.Made, plan.Spec)), new(0.08, HouseStyle.Quiet)));
        }
    }

    private IEnumerable<(string Name, Action<Sheet, double, double> Draw)> KeysOfTracks()
    {
        if (otherTracks)
        {
            yield return ("another track", MarkOfTrack);
        }

        yield return ("joint of track elements", MarkOfElementJoint);
        if (platform.Poses.Count > 0)
        {
            bool coupled = platform.Poses.Any(p => p.Coupled.Count > 0);
            yield return (coupled ? "vehicle in its tightest place; dashed, coupled to it" : "vehicle in its tightest place", MarkOfVehicle);
        }
    }

    private static void MarkOfTrack(Sheet sheet, double x, double y)
    {
        foreach (double rail in (double[])[-1, 1])
        {
            sheet.Line(new(x, y + rail), new(x + 7, y + rail), new(0.25, HouseStyle.Quiet));
        }
    }

    private static void MarkOfElementJoint(Sheet sheet, double x, double y)
    {
        sheet.Line(new(x + 5.5, y - 1.8), new(x + 5.5, y + 1.8), PlanParts.ElementJoint);
        sheet.Circle(new(x + 5.5, y - 1.8), 0.5, new(HouseStyle.Accent));
        sheet.Circle(new(x + 5.5, y + 1.8), 0.5, new(HouseStyle.Accent));
    }

    private void MarkOfVehicle(Sheet sheet, double x, double y)
    {
        var pose = platform.Poses[0];
        var colour = new VehicleLooks(platform).Of(pose.Vehicle.Name, pose.OtherTrack).Colour;
        double wheel = Math.Min(1.2, dossier.Gauge / 10);
        sheet.Box(x, y - 1.5, 7, 3, new(colour, 0.13), new(0.3, colour));
        foreach (double at in (double[])[1.6, 5.4])
        {
            sheet.Line(new(x + at, y - wheel), new(x + at, y + wheel), new(0.45, colour));
        }
    }
}
