using PlatformForge.Exports.Looks;
using PlatformForge.Platforms.Specs;
using PlatformForge.Solids.Bodies;

namespace PlatformForge.Exports.Drawings.Ink;

/// <summary>How drawings colour lines and strips.</summary>
internal static class LineLooks
{
    public static Rgb Of(LineMake made, PlatformSpec spec) => made.Name == LineMake.White ? HouseStyle.White : Palette.Of(LineBlocks.PaintOf(made, spec));
}
