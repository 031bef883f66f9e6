namespace PlatformForge.Projects.Catalogue;

/// <summary>What is known of a finding's code before any project is read: the page of findings is made of these.</summary>
/// <param name="Code">The code, PF and four digits.</param>
/// <param name="RaisedFor">The one thing that it is raised for.</param>
/// <param name="Cure">What mends it, for every message of this code.</param>
/// <param name="NoValue">Why its messages offer no value to take; null where they offer one that was tried.</param>
/// <param name="OneThing">Why it is one thing though several places of the source raise it; null where one does.</param>
public sealed record FindingEntry(string Code, string RaisedFor, string Cure, string? NoValue = null, string? OneThing = null);
