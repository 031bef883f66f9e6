namespace PlatformForge.Units;

/// <summary>What a stage hands on, with a product in it that goes on by itself into other stages.</summary>
internal interface IAnswer
{
    /// <summary>The product; null where there is none.</summary>
    object? Inner { get; }
}
