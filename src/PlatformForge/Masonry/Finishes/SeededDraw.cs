namespace PlatformForge.Masonry.Finishes;

/// <summary>Numbers drawn by a seed and a place, so that what is drawn for one does not hang on how many were drawn before it: the same on every
/// system.</summary>
internal static class SeededDraw
{
    /// <summary>A number from 0 to below 1 (a finaliser of 64-bit hashing, from memory: shifts and odd multipliers).</summary>
    public static double At(int seed, int a, int b, int c = 0)
    {
        unchecked
        {
            ulong x = ((ulong)(uint)seed * 0x9E3779B97F4A7C15) ^ ((ulong)(uint)a * 0xBF58476D1CE4E5B9) ^ ((ulong)(uint)b * 0x94D049BB133111EB)
                ^ ((ulong)(uint)c * 0xD6E8FEB86659FD93);
            x = (x ^ (x >> 30)) * 0xBF58476D1CE4E5B9;
            x = (x ^ (x >> 27)) * 0x94D049BB133111EB;
            x ^= x >> 31;
            return (x >> 11) * (1.0 / (1UL << 53));
        }
    }
}
