using PlatformForge.Platforms.Plans;

namespace PlatformForge.Exports.Looks;

/// <summary>The colours in which pictures and drawings show what stands on a platform.</summary>
internal static class FinishColours
{
    public static Rgb Of(Finish finish) => finish switch
    {
        Finish.Timber => new(0x8A, 0x6E, 0x50),
        Finish.Iron => new(0x3D, 0x45, 0x48),
        Finish.Cream => new(0xEF, 0xE6, 0xCF),
        Finish.Slate => new(0x6B, 0x70, 0x73),
        _ => new(0xC9, 0xB4, 0x93),
    };
}
