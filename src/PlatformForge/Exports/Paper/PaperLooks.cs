using PlatformForge.Exports.Drawings.Ink;
using PlatformForge.Exports.Paper.FullSize;

namespace PlatformForge.Exports.Paper;

/// <summary>How each kind of line looks on a full-size sheet, and what the key calls it. Thin, so that a line says where to within a tenth of a millimetre,
/// and sparing of ink.</summary>
internal static class PaperLooks
{
    public static readonly Pen Frame = new(0.15, HouseStyle.Quiet);
    public static readonly Pen Join = new(0.15, HouseStyle.Ink, 3, 1.2);
    public static readonly Pen Cross = new(0.13, HouseStyle.Ink);
    public static readonly Fill Patch = new(HouseStyle.White, 0.88);

    private static readonly Dictionary<FullSizeLine, (string Name, Pen? Pen, Fill? Fill)> Looks = new()
    {
        [FullSizeLine.Coping] = ("", null, new(HouseStyle.Coping, 0.35)),
        [FullSizeLine.SleeperEnd] = ("sleeper ends, a guide only", new(0.18, HouseStyle.Hair), null),
        [FullSizeLine.OtherRail] = ("rail of another track, running edge", new(0.13, HouseStyle.Quiet), null),
        [FullSizeLine.Rail] = ("rail head: running edge and outer face", new(0.18, HouseStyle.Ink), null),
        [FullSizeLine.Middle] = ("middle of the track", new(0.1, HouseStyle.Quiet, 6, 1.2, 0.8, 1.2), null),
        [FullSizeLine.Tick] = ("", new(0.13, HouseStyle.Ink), null),
        [FullSizeLine.Swept] = ("swept by all vehicles", new(0.25, HouseStyle.Swept, 2.4, 0.9), null),
        [FullSizeLine.PavingJoint] = ("joint of the paving", new(0.08, HouseStyle.Hair), null),
        [FullSizeLine.CopingLine] = ("bricks or tooled margin of the coping", HouseStyle.Hairline, null),
        [FullSizeLine.SlabJoint] = ("joint of coping slabs", new(0.1, HouseStyle.Quiet), null),
        [FullSizeLine.CopingBack] = ("coping's back", new(0.13, HouseStyle.Ink), null),
        [FullSizeLine.WhiteLine] = ("white line", new(0.1, HouseStyle.Hair), null),
        [FullSizeLine.RampHead] = ("ramp head", new(0.18, HouseStyle.Ink, 4, 1), null),
        [FullSizeLine.PostRow] = ("row of posts", new(0.13, HouseStyle.Quiet, 1, 0.8), null),
        [FullSizeLine.Below] = ("below the deck", new(0.13, HouseStyle.Quiet, 1.4, 0.8), null),
        [FullSizeLine.Fitting] = ("recess in the deck", new(0.15, HouseStyle.Ink), null),
        [FullSizeLine.WallFoot] = ("wall's foot, on the baseboard", new(0.2, HouseStyle.Ink, 1.6, 0.8), null),
        [FullSizeLine.BackEdge] = ("back edge and back wall's foot", new(0.3, HouseStyle.Ink), null),
        [FullSizeLine.PlatformEnd] = ("", new(0.3, HouseStyle.Ink), null),
        [FullSizeLine.CopingEdge] = ("coping edge", new(0.3, HouseStyle.Ink), null),
        [FullSizeLine.ElementJoint] = ("joint of track elements", new(0.25, HouseStyle.Accent), null),
        [FullSizeLine.Arrow] = ("", new(0.3, HouseStyle.Accent), null),
        [FullSizeLine.Cut] = ("cut between sections", new(0.3, HouseStyle.Accent), null),
        [FullSizeLine.BaseboardJoint] = ("joint of the baseboard", new(0.5, HouseStyle.Accent, 6, 2), null),
    };

    public static (string Name, Pen? Pen, Fill? Fill) Of(FullSizeLine kind) => Looks[kind];

    public static TextStyle Of(FigureType type) => type switch
    {
        FigureType.Large => new(4.2, HouseStyle.Ink, Bold: true),
        FigureType.Strong => new(3.2, HouseStyle.Accent, Bold: true),
        FigureType.Plain => HouseStyle.Label,
        _ => HouseStyle.Small with { Colour = HouseStyle.Ink },
    };
}
