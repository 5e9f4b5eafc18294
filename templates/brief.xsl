<?xml version="1.0" encoding="UTF-8"?>
<!-- The crew brief: for someone who was not at the survey. Big type, no abbreviations. -->
<xsl:stylesheet version="1.0" xmlns:xsl="http://www.w3.org/1999/XSL/Transform">

  <xsl:template match="plan" mode="brief">
    <div class="blanks who">
      <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'plan-made-by'), '|', key('label', 'electrician'), '|', key('label', 'crew'), '|', key('label', 'start'))"/></xsl:call-template>
    </div>

    <section class="said">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'what-we-build')"/></xsl:element>
      <xsl:for-each select="papers/said/sentence">
        <p>
          <xsl:if test="@strong"><xsl:value-of select="@lead"/><xsl:text> </xsl:text><strong><xsl:value-of select="@strong"/></strong><xsl:text> </xsl:text></xsl:if>
          <xsl:value-of select="."/>
        </p>
      </xsl:for-each>
    </section>

    <section class="ends">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'two-ends')"/></xsl:element>
      <xsl:for-each select="papers/ends/run">
        <div class="run-ends">
          <xsl:element name="{$h3}">
            <xsl:value-of select="@name"/><xsl:text>: </xsl:text><xsl:value-of select="@cable"/>
          </xsl:element>
          <xsl:if test="@protective"><p><xsl:value-of select="key('label', 'earth')"/><xsl:text>: </xsl:text><xsl:value-of select="@protective"/><xsl:text>.</xsl:text></p></xsl:if>
          <div class="pair">
            <xsl:for-each select="end">
              <div class="end">
                <p class="which"><xsl:value-of select="@which"/></p>
                <xsl:for-each select="joined">
                  <p class="joined"><xsl:value-of select="@what"/><xsl:text> </xsl:text><strong><xsl:value-of select="@state"/></strong></p>
                  <p><xsl:value-of select="."/></p>
                </xsl:for-each>
                <p>
                  <xsl:value-of select="key('label', 'into')"/><xsl:text> </xsl:text><xsl:value-of select="@into"/><xsl:text>; </xsl:text><xsl:value-of select="@place"/>
                  <xsl:text>. </xsl:text><xsl:value-of select="key('label', 'leave-tail')"/><xsl:text> </xsl:text><xsl:value-of select="@tail"/>
                  <xsl:if test="@loop"><xsl:text> </xsl:text><xsl:value-of select="key('label', 'and-loop')"/><xsl:text> </xsl:text><xsl:value-of select="@loop"/></xsl:if>
                  <xsl:text>.</xsl:text>
                  <xsl:if test="@room"><xsl:text> </xsl:text><xsl:value-of select="@room"/></xsl:if>
                </p>
                <ul class="ticks">
                  <xsl:for-each select="do"><li><xsl:call-template name="box"/><span><xsl:if test="@kind = 'main'"><xsl:value-of select="key('label', 'fit')"/><xsl:text>: </xsl:text></xsl:if><xsl:value-of select="."/></span></li></xsl:for-each>
                </ul>
                <xsl:call-template name="blank"><xsl:with-param name="label" select="key('label', 'board-way')"/></xsl:call-template>
              </div>
            </xsl:for-each>
          </div>
          <xsl:if test="cable"><p><xsl:value-of select="key('label', 'the-cable')"/><xsl:text>: </xsl:text><xsl:value-of select="cable"/></p></xsl:if>
          <xsl:if test="core">
            <xsl:call-template name="cores"/>
          </xsl:if>
        </div>
      </xsl:for-each>
    </section>

    <xsl:if test="papers/rods">
      <section class="rods">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'earth-rods')"/></xsl:element>
        <ul class="ticks">
          <xsl:for-each select="papers/rods/do"><li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li></xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <section class="ask">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'ask-first')"/></xsl:element>
      <p><xsl:value-of select="key('label', 'who-owns-cutout')"/></p>
      <div class="blanks">
        <xsl:call-template name="blanks"><xsl:with-param name="labels" select="concat(key('label', 'isolation'), '|', key('label', 'key'), '|', key('label', 'operator'), '|', key('label', 'customer-telephone'), '|', key('label', 'emergency'))"/></xsl:call-template>
      </div>
      <xsl:if test="job/@customer">
        <p class="small"><xsl:value-of select="key('label', 'customer')"/><xsl:text>: </xsl:text><xsl:value-of select="job/@customer"/></p>
      </xsl:if>
    </section>

    <section class="cautions">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'whole-job')"/></xsl:element>
      <p class="small"><xsl:value-of select="key('label', 'flag-numbers')"/></p>
      <ul>
        <xsl:for-each select="cautions/caution[not(@stretches)]">
          <li><xsl:call-template name="caution"/></li>
        </xsl:for-each>
      </ul>
    </section>

    <section class="day">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'day')"/></xsl:element>
      <p class="small"><xsl:value-of select="key('label', 'hold-points')"/></p>
      <ol class="steps">
        <xsl:for-each select="papers/day/step">
          <li>
            <xsl:if test="@hold"><xsl:attribute name="class">hold</xsl:attribute></xsl:if>
            <xsl:call-template name="box"/>
            <div class="step-text"><xsl:value-of select="."/></div>
            <xsl:if test="@hold">
              <div class="hold-line"><strong><xsl:value-of select="key('label', 'hold')"/><xsl:text>: </xsl:text><xsl:value-of select="@hold"/></strong>
                <xsl:call-template name="blank"><xsl:with-param name="label" select="key('label', 'time-initials')"/></xsl:call-template>
              </div>
            </xsl:if>
          </li>
        </xsl:for-each>
      </ol>
    </section>

    <section class="tools">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'van')"/></xsl:element>
      <p class="small"><xsl:value-of select="key('label', 'common-practice')"/></p>
      <ul class="ticks">
        <li><xsl:call-template name="box"/><span><xsl:value-of select="key('label', 'all-parts')"/></span></li>
        <xsl:for-each select="papers/tools/tool">
          <li><xsl:call-template name="box"/><span><xsl:value-of select="."/></span></li>
        </xsl:for-each>
      </ul>
    </section>

    <xsl:if test="papers/pulling">
      <section class="pulling">
        <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'pulling-plan')"/></xsl:element>
        <ul class="ticks">
          <xsl:for-each select="papers/pulling/do"><li class="{@kind}"><xsl:if test="@kind = 'main'"><xsl:call-template name="box"/></xsl:if><span><xsl:value-of select="."/></span></li></xsl:for-each>
        </ul>
      </section>
    </xsl:if>

    <section class="work">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'stretch-by-stretch')"/></xsl:element>
      <p><xsl:value-of select="key('label', 'height-zero')"/></p>
      <div class="cards">
      <xsl:apply-templates select="papers/work/stretch" mode="brief"/>
      </div>
    </section>

    <section class="different">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'found-different-plan')"/></xsl:element>
      <p class="small"><xsl:value-of select="key('label', 'stop-and-ring')"/></p>
      <div class="writing" aria-hidden="true">
        <span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span><span class="line"></span>
      </div>
          <p class="small"><xsl:value-of select="key('label', 'diagram-follows')"/><xsl:text> </xsl:text><xsl:value-of select="@route"/><xsl:text>.diagram.svg</xsl:text></p>
      <xsl:if test="$paper = 'brief'"><p class="small print-only" aria-hidden="true"><xsl:call-template name="foot-words"/></p></xsl:if>
    </section>

    <section class="diagram-sheet" id="diagram">
      <xsl:element name="{$h2}"><xsl:value-of select="key('label', 'run-diagram')"/></xsl:element>
      <xsl:call-template name="diagram"/>
    </section>
  </xsl:template>

  <xsl:template match="stretch" mode="brief">
    <xsl:variable name="name" select="@name"/>
    <xsl:variable name="here" select="concat(' ', @number, ' ')"/>
    <article class="stretch">
      <div class="stretch-head">
        <span class="number"><xsl:value-of select="@number"/></span>
        <xsl:element name="{$h3}"><xsl:value-of select="@name"/></xsl:element>
        <p class="where">
          <xsl:value-of select="@means"/><xsl:text>; </xsl:text>
          <strong><xsl:value-of select="@length"/></strong>
          <xsl:if test="@rise"><xsl:text>, </xsl:text><xsl:value-of select="@rise"/></xsl:if>
          <xsl:text>; </xsl:text><xsl:value-of select="key('label', 'from')"/><xsl:text> </xsl:text><xsl:value-of select="@from"/><xsl:text> </xsl:text><xsl:value-of select="key('label', 'to')"/><xsl:text> </xsl:text><xsl:value-of select="@to"/><xsl:text> </xsl:text><xsl:value-of select="key('label', 'along-the-way')"/><xsl:text> </xsl:text><xsl:value-of select="@height"/>
        </p>
      </div>
      <ul class="ticks">
        <xsl:for-each select="do[@kind != 'mind' and @kind != 'note']">
          <li class="{@kind}"><xsl:if test="@kind != 'aside' and @kind != 'bend'"><xsl:call-template name="box"/></xsl:if><span><xsl:value-of select="."/></span></li>
        </xsl:for-each>
      </ul>
      <xsl:variable name="flags" select="/plan/cautions/caution[contains(concat(' ', @stretches, ' '), $here)]"/>
      <xsl:variable name="told" select="$flags[@where != $name]"/>
      <xsl:variable name="warned" select="/plan/warnings/warning[@where = $name and @stretch]"/>
      <xsl:if test="do[@kind = 'mind'] or $flags or $warned">
        <ul class="minds">
          <xsl:for-each select="$warned"><li><strong><xsl:value-of select="key('label', 'warning')"/><xsl:text>: </xsl:text></strong><xsl:value-of select="."/></li></xsl:for-each>
          <xsl:for-each select="do[@kind = 'mind']"><li><xsl:value-of select="."/></li></xsl:for-each>
          <xsl:for-each select="$flags[@where = $name]"><li><xsl:call-template name="caution"/></li></xsl:for-each>
          <xsl:if test="$told">
            <li><strong><xsl:value-of select="key('label', 'here-too')"/><xsl:text> </xsl:text><xsl:for-each select="$told"><xsl:if test="position() &gt; 1">, </xsl:if><xsl:value-of select="@number"/><xsl:if test="not(@where = following-sibling::caution[contains(concat(' ', @stretches, ' '), $here)][1]/@where)"><xsl:text> (</xsl:text><xsl:value-of select="@where"/><xsl:text>)</xsl:text></xsl:if></xsl:for-each></strong></li>
          </xsl:if>
        </ul>
      </xsl:if>
      <xsl:for-each select="do[@kind = 'note']"><p class="note"><xsl:value-of select="key('label', 'from-survey')"/><xsl:text>: </xsl:text><xsl:value-of select="."/></p></xsl:for-each>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="key('label', 'where-exactly')"/></xsl:call-template>
      <xsl:call-template name="blank"><xsl:with-param name="label" select="key('label', 'found-different')"/></xsl:call-template>
    </article>
  </xsl:template>

  <!-- The number is that of the flag on the diagram. -->
  <xsl:template name="caution">
    <strong><xsl:value-of select="key('label', 'flag')"/><xsl:text> </xsl:text><xsl:value-of select="@number"/><xsl:text>: </xsl:text></strong><xsl:value-of select="."/>
  </xsl:template>
</xsl:stylesheet>
