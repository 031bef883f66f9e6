using System.Text.Json.Serialization;
using PlatformForge.Exports.Documents;
using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Workshop;
using PlatformForge.Platforms.Plans;
using PlatformForge.Platforms.Specs;
using PlatformForge.Sections.Forms;
using PlatformForge.Solids;
using static System.FormattableString;

namespace PlatformForge.Exports.Reports.Forms;

/// <summary>The back of a platform where it is no wall: its kind by its name in the project file; of a bank the slope as n of 1 in n, the
/// width from the deck's edge to its foot beside the level deck and at its least in mm of the model, the area of its face in mm², and the
/// plastic of its shell in mm³, which between two parallel faces is area times thickness; of a bank that is a print of its own the volume of its
/// pieces. Where nobody stated the slope and ramps on curves want a steeper one, the slope that it has elsewhere.</summary>
public sealed record BackReport(
    string Kind,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Slope = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Width = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? LeastWidth = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Area = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? Shell = null,
    [property: JsonIgnore(Condition = JsonIgnoreCondition.WhenWritingNull)] double? SlopeElsewhere = null)
{
    internal static BackReport? Of(SectionSet set)
    {
        var spec = set.Plan.Spec;
        if (spec.IsIsland || spec.Back.ShowsWall)
        {
            return null;
        }

        if (set.Plan.Bank is not { } bank)
        {
            return new("open");
        }

        double[] widths = [.. bank.Foot.Reach.Zip(bank.Edge.Reach, (f, e) => f - e)];
        double area = SurfaceAreas.Of(set)[(int)Paint.Turf];
        return new("bank", bank.Slope, widths.Max(), widths.Min(), area, bank.IsApart
            ? set.Lines.Pieces.Where(p => p.Made.Name == LineMake.Bank).Sum(p => p.Solid.ColumnVolume)
            : area * bank.Thickness / Math.Sqrt(1 + (bank.Slope * bank.Slope)), spec.Back.IsSteepened ? BackSpec.UnaskedSlope : null);
    }

    internal static void Say(DocumentBuilder to, SectionSet set)
    {
        if (Of(set) is not { } back)
        {
            return;
        }

        to.Title("Back");
        to.Say(back.Kind == "open"
            ? "The back is open: no wall stands there, and deck and ribs end at the plane of the backscene, to which it is glued or screwed."
            : Invariant($"A bank falls 1 in {Figures.Short(back.Slope!.Value)} from the deck's edge to {Figures.Fine(back.Width!.Value)} mm behind it")
                + (back.Width - back.LeastWidth > 1 ? Invariant($", {Figures.Fine(back.LeastWidth!.Value)} where a ramp is lowest") : "")
                + Returns(set.Plan.Bank!)
                + (back.SlopeElsewhere is { } slope ? Steepened(slope) : "")
                + Invariant($". Its face has {Figures.Fixed(back.Area!.Value / 100, 1)} cm²; ")
                + (set.Plan.Bank is { IsApart: true } ? Solid(back, set) : Hollow(back, set.Plan.Bank!)));
    }

    private static string Returns(PlanBank bank) => bank.Returns switch
    {
        [] => "",
        [var one] => Invariant($", and turns round the platform's {(one.IsAtEnd ? "end" : "start")} by a quarter of a cone of {Figures.Fine(one.Radius)} mm"),
        _ => Invariant($", and turns round both ends by a quarter of a cone of {Figures.Fine(bank.Returns[0].Radius)} mm"),
    };

    private static string Steepened(double elsewhere) =>
        Invariant($". No slope is stated, and elsewhere it would be 1 in {Figures.Short(elsewhere)}: beside ramps on curves that lies flatter on the bed ")
            + "than 45 degrees, so all of it was made steeper";

    private static string Hollow(BackReport back, PlanBank bank) => Invariant($"it is a shell {Figures.Fine(bank.Thickness)} mm ")
        + Invariant($"thick, measured level, of about {Figures.Fixed(back.Shell!.Value / 1000, 1)} cm³ of plastic, open below, ")
        + "with webs at ribs and joints; it prints with its section, without supports.";

    private static string Solid(BackReport back, SectionSet set) =>
        Invariant($"it is a print of its own, a piece behind each section, {Figures.Fixed(back.Shell!.Value / 1000, 1)} cm³ that the slicer fills as thinly ")
        + Invariant($"as you like. It stands on its foot, face up, without supports, and is glued to the baseboard ")
        + Invariant($"{Figures.Fine(set.Plan.Spec.Back.Fit)} mm behind the wall; ")
        + "its layers are steps of their height times its slope, which turf covers.";
}
