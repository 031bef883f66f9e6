namespace PlatformForge.Exports.Pictures;

/// <summary>A sheet of warm paper that lightens downward, as a studio's background does.</summary>
internal sealed class Backdrop(int height)
{
    private static readonly LinearColour Top = LinearColour.Of(new(0xC9, 0xD3, 0xDA));
    private static readonly LinearColour Bottom = LinearColour.Of(new(0xF3, 0xF0, 0xE9));

    public LinearColour At(double y)
    {
        double t = Math.Clamp(y / height, 0, 1);
        t = t * t * (3 - (2 * t));
        return (Top * (1 - t)) + (Bottom * t);
    }
}
