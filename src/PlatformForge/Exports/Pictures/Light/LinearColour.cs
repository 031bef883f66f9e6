using System.Runtime.CompilerServices;
using PlatformForge.Exports.Looks;

namespace PlatformForge.Exports.Pictures.Light;

/// <summary>A colour by amounts of light, in which means and products are right; 1 is white.</summary>
internal readonly record struct LinearColour(double R, double G, double B)
{
    private const int Steps = 4096;

    // The sRGB curve (IEC 61966-2-1), tabulated once.
    private static readonly double[] FromByte = [.. Enumerable.Range(0, 256).Select(i => Decode(i / 255.0))];
    private static readonly byte[] ToByte = [.. Enumerable.Range(0, Steps + 1).Select(i => (byte)Math.Round(255 * Encode((double)i / Steps)))];

    public static LinearColour Of(Rgb colour) => new(FromByte[colour.R], FromByte[colour.G], FromByte[colour.B]);

    public static LinearColour operator +(LinearColour a, LinearColour b) => new(a.R + b.R, a.G + b.G, a.B + b.B);

    public static LinearColour operator *(LinearColour a, double k) => new(a.R * k, a.G * k, a.B * k);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public void Put(Span<byte> to)
    {
        to[0] = Byte(R);
        to[1] = Byte(G);
        to[2] = Byte(B);
    }

    /// <summary>The colour of something lit, its brightest lights bent under white; paper stays as it is.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public LinearColour Bent() => new(Shoulder(R), Shoulder(G), Shoulder(B));

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static byte Byte(double light) => ToByte[(int)(Math.Clamp(light, 0, 1) * Steps)];

    // Bends what is brighter than most of the range gently under 1, so that light slabs keep their joints.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static double Shoulder(double light) => light < 0.6 ? Math.Max(0, light) : 1 - (0.4 * 0.4 / (light - 0.2));

    private static double Decode(double v) => v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);

    private static double Encode(double v) => v <= 0.0031308 ? 12.92 * v : (1.055 * Math.Pow(v, 1 / 2.4)) - 0.055;
}
